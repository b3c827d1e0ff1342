// Package apptheme is how the window looks: its colours by what they mean, the sizes
// of its letters, its icons, and what stands for each [model.State]. It is called so
// because files that draw import Fyne's own theme beside it.
package apptheme
