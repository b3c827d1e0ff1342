// Package desktop assembles the window: the table of its screens, in the order of the list at the
// left. Its tests work the whole window, as a person would.
package desktop
