package archtest

import (
	"fmt"
	"slices"
	"strings"
	"testing"
)

// belongsTo names the packages that may use a part from outside. A part that
// is not listed may be used anywhere its package's own rules allow.
var belongsTo = map[string][]string{
	"github.com/shopspring/decimal": {"internal/quantity"},
	"math/big":                      {"internal/quantity"},
	"github.com/BurntSushi/toml":    {"internal/tomlfile", "internal/scalelink", "internal/ratefiles"},
	"github.com/pelletier/go-toml":  {"internal/tomlfile"},
	"database/sql":                  {"internal/book/sqlite"},
	"github.com/jackc/pgx/v5":       {"internal/book/postgres", "internal/headoffice/central", "internal/headoffice/officetest"},
	"modernc.org/sqlite":            {"internal/book/sqlite"},
	"github.com/boombuler/barcode":  {"internal/scaleticket/barcode"},
	"rsc.io/qr":                     {"internal/scaleticket/barcode"},
	"go.bug.st/serial":              {"internal/scalelink"},
	"github.com/alecthomas/kong":    {"cmd/tenth", "cmd/tenthpoint"},
	"github.com/xuri/excelize/v2":   {"internal/report"},
	"fyne.io":                       slices.Concat(windows, areas, []string{"cmd/tenthpoint"}),
}

// outsideParts keeps each part from outside in the one place that answers for
// it, so that replacing it touches one package. Tests may use any part.
func outsideParts(sources []source) []string {
	var problems []string
	for _, s := range sources {
		if s.isTest() {
			continue
		}
		for _, i := range s.imports() {
			for part, owners := range belongsTo {
				if within(i.path, part) && !within(s.pkg(), owners...) {
					problems = append(problems, fmt.Sprintf("%s: %s belongs to %s; %s goes through it",
						s.at(i.node), part, strings.Join(owners, ", "), s.pkg()))
				}
			}
		}
	}
	return problems
}

// windowInCommandOnly keeps the one package that needs cgo in the desktop
// command, so that every screen is tested without a display.
func windowInCommandOnly(sources []source) []string {
	var problems []string
	for _, s := range sources {
		for _, i := range s.imports() {
			if i.path == "fyne.io/fyne/v2/app" && !within(s.pkg(), "cmd/tenthpoint") {
				problems = append(problems, fmt.Sprintf(
					"%s: only cmd/tenthpoint may import fyne.io/fyne/v2/app, which needs cgo and a display", s.at(i.node)))
			}
		}
	}
	return problems
}

func TestOutsidePartsCanFail(t *testing.T) {
	expectProblems(t, outsideParts([]source{
		snippet(t, "internal/settle/a.go", `package settle
import _ "github.com/shopspring/decimal"`),
		snippet(t, "internal/scalehouse/a.go", `package scalehouse
import _ "database/sql"
import _ "fmt"`),
		snippet(t, "ui/session/a.go", `package session
import _ "fyne.io/fyne/v2/widget"`),
		snippet(t, "ui/shell/a.go", `package shell
import _ "fyne.io/fyne/v2/widget"`),
		snippet(t, "internal/scalehouse/a_test.go", `package scalehouse
import _ "database/sql"`),
	}),
		"internal/settle/a.go:2: github.com/shopspring/decimal belongs to internal/quantity",
		"internal/scalehouse/a.go:2: database/sql belongs to internal/book/sqlite",
		"ui/session/a.go:2: fyne.io belongs to")
}

func TestWindowInCommandOnlyCanFail(t *testing.T) {
	expectProblems(t, windowInCommandOnly([]source{
		snippet(t, "ui/shell/a_test.go", `package shell
import _ "fyne.io/fyne/v2/app"
import _ "fyne.io/fyne/v2/test"`),
		snippet(t, "cmd/tenthpoint/main.go", `package main
import _ "fyne.io/fyne/v2/app"`),
	}), "ui/shell/a_test.go:2: only cmd/tenthpoint")
}
