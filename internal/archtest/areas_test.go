package archtest

import (
	"fmt"
	"path"
	"slices"
	"strings"
	"testing"
)

// areas are the packages with the presenter and the screen of one part of the window together.
// Files named screen*.go draw; every other file says what is drawn, and is tested without a window.
var areas = []string{"ui/yard", "ui/yard/board", "ui/lab", "ui/lab/shelf", "ui/tickets", "ui/disputes", "ui/day", "ui/season", "ui/bins", "ui/rates", "ui/growers", "ui/equipment", "ui/setup"}

// windows are the packages that only draw.
var windows = slices.Concat(widgetPackages, []string{"ui/gallery", "ui/widgettest", "ui/shell", "ui/listdetail", "ui/help", "ui/desktop"})

// widgetPackages are the packages screens are built from.
var widgetPackages = []string{"ui/apptheme", "ui/paint", "ui/widgets", "ui/widgets/status", "ui/charts", "ui/paperview"}

// presenters are the packages of the window that never draw.
var presenters = []string{"ui/model", "ui/session", "ui/handbook"}

// draws reports whether a file may know the window's toolkit.
func (s source) draws() bool {
	if within(s.pkg(), areas...) {
		name := path.Base(s.path)
		return strings.HasPrefix(name, "screen") || strings.HasPrefix(name, "view")
	}
	return within(s.pkg(), windows...)
}

// presents reports whether a file says what the window shows.
func (s source) presents() bool {
	return within(s.pkg(), presenters...) || within(s.pkg(), areas...) && !s.draws()
}

// presentersDoNotDraw keeps the toolkit, and the packages around it, out of every
// file that says what is shown.
func presentersDoNotDraw(sources []source) []string {
	var problems []string
	for _, s := range sources {
		if s.isTest() || !s.presents() {
			continue
		}
		for _, i := range s.imports() {
			inner, _ := strings.CutPrefix(i.path, modulePrefix)
			if within(i.path, "fyne.io") || slices.Contains(windows, inner) {
				problems = append(problems, fmt.Sprintf(
					"%s: %s in a file that says what is shown; draw it in a file named screen*.go", s.at(i.node), i.path))
			}
		}
	}
	return problems
}

func TestPresentersDoNotDrawCanFail(t *testing.T) {
	expectProblems(t, presentersDoNotDraw([]source{
		snippet(t, "ui/yard/load.go", `package yard
import _ "fyne.io/fyne/v2/widget"`),
		snippet(t, "ui/yard/screen.go", `package yard
import _ "fyne.io/fyne/v2/widget"`),
		snippet(t, "ui/yard/screen_test.go", `package yard
import _ "fyne.io/fyne/v2/widget"`),
		snippet(t, "ui/session/a.go", `package session
import _ "tenthpoint/ui/widgets"`),
	}), "ui/yard/load.go:2: fyne.io/fyne/v2/widget in a file", "ui/session/a.go:2: tenthpoint/ui/widgets in a file")
}
