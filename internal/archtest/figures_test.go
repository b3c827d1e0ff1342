package archtest

import (
	"fmt"
	"go/ast"
	"go/token"
	"slices"
	"testing"
)

// exactPackages hold weights, percents, bushels or money.
var exactPackages = slices.Concat(core, papers, rooms, []string{"internal/book", "internal/book/sqlite", "schedules"})

// floatNames are types and functions through which a binary fraction enters.
var floatNames = []string{
	"float32", "float64", "ParseFloat", "FormatFloat", "Float64", "Float32", "SetFloat64",
	"NewFromFloat", "NewFromFloat32", "NewFromFloatWithExponent", "InexactFloat64",
}

// refusesFloats is the reader of editions and charts: a bare number reaches it
// as a float, and it has to know one to refuse it.
const refusesFloats = "internal/tomlfile"

// widthsOfColumns gives a library the widths of a workbook's columns, which it takes
// as floats.
const widthsOfColumns = "internal/report/xlsxwidths.go"

// noFloats keeps binary fractions away from every amount: 0.1 has no binary
// form, and a tenth of a point is money. A length on paper may be written in points,
// since 7.9 * paper.Point is a whole number.
func noFloats(sources []source) []string {
	var problems []string
	for _, s := range sources {
		if s.isTest() || !within(s.pkg(), exactPackages...) && !s.presents() || s.pkg() == refusesFloats || s.path == widthsOfColumns {
			continue
		}
		ast.Inspect(s.file, func(n ast.Node) bool {
			if isLength(n) {
				return false
			}
			if what := floating(n); what != "" {
				problems = append(problems, fmt.Sprintf(
					"%s: %s in %s: amounts are exact, use internal/quantity", s.at(n), what, s.pkg()))
			}
			return true
		})
	}
	return problems
}

func floating(n ast.Node) string {
	switch n := n.(type) {
	case *ast.Ident:
		if slices.Contains(floatNames, n.Name) {
			return n.Name
		}
	case *ast.BasicLit:
		if n.Kind == token.FLOAT {
			return "the number " + n.Value
		}
	}
	return ""
}

// isLength reports whether an expression is a number of points: x * paper.Point, or
// pt for short.
func isLength(n ast.Node) bool {
	product, ok := n.(*ast.BinaryExpr)
	if !ok || product.Op != token.MUL {
		return false
	}
	switch unit := product.Y.(type) {
	case *ast.Ident:
		return unit.Name == "Point" || unit.Name == "pt"
	case *ast.SelectorExpr:
		return unit.Sel.Name == "Point"
	}
	return false
}

// roundings are the calls that lose part of a figure. They happen in
// quantity, by a rule with a name that an edition chose.
var roundings = []string{
	"Round", "RoundBank", "RoundCash", "RoundCeil", "RoundFloor", "RoundUp", "RoundDown", "RoundToEven",
	"DivRound", "QuoRem", "Trunc", "Truncate", "Floor", "Ceil", "StringFixed", "FloatString",
}

// noStrayRounding finds a rounding that no rule of an edition asked for.
// Dividing amounts is exact and free to all; dividing bare decimals rounds in
// silence after sixteen places, so a file that knows decimals may not.
func noStrayRounding(sources []source) []string {
	var problems []string
	for _, s := range sources {
		if s.isTest() || s.pkg() == "internal/quantity" || !within(s.pkg(), "internal", "schedules") && !s.presents() {
			continue
		}
		bare := s.nameOf("github.com/shopspring/decimal")
		s.calls(func(call *ast.CallExpr, chosen *ast.SelectorExpr) {
			name := chosen.Sel.Name
			rounds := slices.Contains(roundings, name) && !s.ofTime(call)
			if rounds || name == "Div" && bare != "" {
				problems = append(problems, fmt.Sprintf(
					"%s: %s in %s: rounding is a rule of an edition and happens in internal/quantity", s.at(call), name, s.pkg()))
			}
		})
	}
	return problems
}

// ofTime reports whether a call is given a duration, which is no amount.
func (s source) ofTime(call *ast.CallExpr) bool {
	clock, found := s.nameOf("time"), false
	for _, arg := range call.Args {
		ast.Inspect(arg, func(n ast.Node) bool {
			if x, ok := n.(*ast.Ident); ok && clock != "" && x.Name == clock {
				found = true
			}
			return !found
		})
	}
	return found
}

func TestNoFloatsCanFail(t *testing.T) {
	const broken = `package x
import "strconv"
var pounds float64
var share = 0.5
var read, _ = strconv.ParseFloat("1", 64)`
	expectProblems(t, noFloats([]source{
		snippet(t, "internal/settle/a.go", broken),
		snippet(t, "internal/settle/draw.go", broken),
		snippet(t, "internal/settle/a_test.go", broken),
		snippet(t, widthsOfColumns, broken),
		snippet(t, "internal/paper/a.go", "package x\nconst size, other = 7.9 * paper.Point, 7.9 * wheat"),
		snippet(t, "ui/yard/screen.go", broken),
		snippet(t, "internal/tomlfile/a.go", broken),
		snippet(t, "ui/yard/a.go", `package yard
func f(x any) string { return x.(float32) }`),
	}),
		"internal/settle/a.go:3: float64", "internal/settle/a.go:4: the number 0.5", "internal/settle/a.go:5: ParseFloat",
		"internal/settle/draw.go:3", "internal/settle/draw.go:4", "internal/settle/draw.go:5",
		"internal/paper/a.go:2: the number 7.9", "ui/yard/a.go:2: float32")
}

func TestNoStrayRoundingCanFail(t *testing.T) {
	expectProblems(t, noStrayRounding([]source{
		snippet(t, "internal/settle/a.go", `package settle
func f() { x := price.Times(y).Round(2); _ = rule.Round }`),
		snippet(t, "internal/rates/a.go", `package rates
import d "github.com/shopspring/decimal"
func f() { a.Div(b) }`),
		snippet(t, "internal/worksheet/a.go", `package working
func f() { a.Div(b); a.Truncate(2) }`),
		snippet(t, "internal/quantity/a.go", `package quantity
import "github.com/shopspring/decimal"
func f() { a.Div(b).Truncate(2) }`),
		snippet(t, "internal/scalelink/a.go", `package scalelink
import "time"
func f() { age.Truncate(100 * time.Millisecond); weight.Truncate(0) }`),
		snippet(t, "ui/yard/a.go", `package yard
func f() { a.Floor() }`),
	}),
		"internal/settle/a.go:2: Round in internal/settle",
		"internal/rates/a.go:3: Div in internal/rates",
		"internal/worksheet/a.go:2: Truncate",
		"internal/scalelink/a.go:3: Truncate",
		"ui/yard/a.go:2: Floor")
}
