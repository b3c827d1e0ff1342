package apptheme

import (
	_ "embed" // the icons below are drawn for this elevator and live in icons/

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

//go:embed icons/tenthpoint.svg
var appIconSVG []byte

var (
	//go:embed icons/ok.svg
	okSVG []byte
	//go:embed icons/warn.svg
	warnSVG []byte
	//go:embed icons/stop.svg
	stopSVG []byte
	//go:embed icons/wait.svg
	waitSVG []byte
	//go:embed icons/lock.svg
	lockSVG []byte
	//go:embed icons/missing.svg
	missingSVG []byte
	//go:embed icons/ticked.svg
	tickedSVG []byte
	//go:embed icons/unticked.svg
	untickedSVG []byte
	//go:embed icons/print.svg
	printSVG []byte
	//go:embed icons/find.svg
	findSVG []byte
	//go:embed icons/truck.svg
	truckSVG []byte
)

var (
	iconOK       = fyne.NewStaticResource("ok.svg", okSVG)
	IconWarn     = fyne.NewStaticResource("warn.svg", warnSVG)
	iconStop     = fyne.NewStaticResource("stop.svg", stopSVG)
	iconWait     = fyne.NewStaticResource("wait.svg", waitSVG)
	iconLock     = fyne.NewStaticResource("lock.svg", lockSVG)
	IconMissing  = fyne.NewStaticResource("missing.svg", missingSVG)
	IconTicked   = fyne.NewStaticResource("ticked.svg", tickedSVG)
	IconUnticked = fyne.NewStaticResource("unticked.svg", untickedSVG)
)

// AppIcon is the program's icon, for the window and the taskbar: a kernel beside a rule of ten
// parts, with one tenth pointed out.
func AppIcon() fyne.Resource { return fyne.NewStaticResource("tenthpoint.svg", appIconSVG) }

// Small icons a command or a heading may carry, in the colour of ink.
var (
	IconPrint fyne.Resource = tinted(fyne.NewStaticResource("print.svg", printSVG), ColorInk)
	IconFind  fyne.Resource = tinted(fyne.NewStaticResource("find.svg", findSVG), ColorInk)
	IconTruck fyne.Resource = tinted(fyne.NewStaticResource("truck.svg", truckSVG), ColorInk)
)

// tinted gives an icon the colour of a name, in any theme.
func tinted(icon fyne.Resource, name fyne.ThemeColorName) fyne.Resource {
	return theme.NewColoredResource(icon, name)
}
