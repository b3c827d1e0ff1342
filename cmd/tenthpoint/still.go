package main

import (
	"runtime"

	"fyne.io/fyne/v2"
)

// withoutAnimations makes an app the current one with carets that stand still. A caret that fades draws
// the whole window a dozen times a second, which without a graphics card keeps a sixth of a core busy
// at a desk that nobody touches. What has the keyboard is seen by its ring. On macOS Fyne itself wants
// its own settings back, so there carets fade.
func withoutAnimations(a fyne.App) {
	if runtime.GOOS != "darwin" {
		fyne.SetCurrentApp(stillApp{a})
	}
}

type stillApp struct{ fyne.App }

func (a stillApp) Settings() fyne.Settings { return stillSettings{a.App.Settings()} }

type stillSettings struct{ fyne.Settings }

func (stillSettings) ShowAnimations() bool { return false }
