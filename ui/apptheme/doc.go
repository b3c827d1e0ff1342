// Package apptheme is the window's theme: its colours by what they mean, the sizes of its text, its
// icons, and the icon and colour of each [model.State]. It is not called theme because files that
// draw import Fyne's own theme beside it.
package apptheme
