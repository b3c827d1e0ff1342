package settle_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"math/big"
	"strings"
	"testing"

	"tenthpoint/internal/rates"
	"tenthpoint/internal/settle"
)

// work is the unrounded result of a published case. Everything about shrink,
// drying and discounts is worked by the engine, under an edition written for
// the case; plain arithmetic of the source's own figures is done as written.
func work(t *testing.T, c publishedCase) *big.Rat {
	t.Helper()
	if c.method == "arithmetic" {
		tree, err := parser.ParseExpr(c.arguments)
		if err != nil {
			t.Fatal(err)
		}
		return reckon(t, tree)
	}
	a := arguments(c.arguments)
	result := methods[c.method](t, a)
	if factor, ok := a["times"]; ok {
		result = times(result, figure(factor))
	}
	return result
}

func arguments(text string) map[string]string {
	out := map[string]string{"weight": "100"} // so that a weight reads as a percent
	for _, word := range strings.Fields(text) {
		key, value, _ := strings.Cut(word, "=")
		out[key] = value
	}
	return out
}

var methods = map[string]func(*testing.T, map[string]string) *big.Rat{
	// factor: percent of the wet weight for one point down to a moisture.
	"factor": func(t *testing.T, a map[string]string) *big.Rat {
		a["from"] = add(figure(a["to"]), rat(1, 1)).FloatString(1)
		return waterTaken(t, a)
	},
	// shrink: the water between two moistures.
	"shrink": waterTaken,
	// dry: the weight left.
	"dry": func(t *testing.T, a map[string]string) *big.Rat { return minus(figure(a["weight"]), waterTaken(t, a)) },
	// equivalent: the weight at one moisture that holds the dry matter of a
	// weight at another; wetter than the base it is a credit.
	"equivalent": func(t *testing.T, a map[string]string) *big.Rat {
		a["from"], a["to"] = a["base"], a["at"]
		return minus(figure(a["weight"]), waterTaken(t, a))
	},
	// handled: water and a percent of the wet weight.
	"handled": func(t *testing.T, a map[string]string) *big.Rat {
		s := settled(t, a, waterRule(a), "[handling]\nmethod = \"wet\"\nrate = \""+a["handling"]+" %\"\nalways = false")
		return add(exact(t, s, "shrink.water"), exact(t, s, "handling"))
	},
	// points: a fixed percent a point; left: what it leaves.
	"points": pointsTaken,
	"left": func(t *testing.T, a map[string]string) *big.Rat {
		return minus(figure(a["weight"]), pointsTaken(t, a))
	},
	"bushels": func(t *testing.T, a map[string]string) *big.Rat {
		a["from"] = "15"
		return exact(t, settled(t, a), "quantity")
	},
	// discount: percent of the price a point, or with a price the money.
	"discount": func(t *testing.T, a map[string]string) *big.Rat {
		e := unrounded(t, noShrink, "[[discount]]\nlabel = \"Moisture\"\nfactor = \"moisture\"\nform = \"per-unit\"\nof = \"price\"\nbasis = \"net\"\nuntested = \"refuse\"\nside = \"above\"\npart = \"exact\"\nper = \"1 %\"\nbase = \""+a["base"]+" %\"\ndiscount = \""+a["rate"]+" %\"")
		if a["price"] == "" {
			return exact(t, mustSettle(t, corn("56000", a["from"]), e), "discount.moisture.rate")
		}
		return exact(t, mustSettle(t, corn("56000", a["from"], at(a["price"]+" $/bu")), e), "discount.moisture.unit")
	},
	"drying": func(t *testing.T, a map[string]string) *big.Rat {
		return exact(t, settled(t, a, "[drying]\nmethod = \"per-point\"\nbasis = \"net\"\nstep = \"continuous\"\ntrigger = \""+a["to"]+" %\"\nto = \""+a["to"]+" %\"\nrate = \""+a["rate"]+" $/bu/pt\""), "drying")
	},
}

func waterTaken(t *testing.T, a map[string]string) *big.Rat {
	return exact(t, settled(t, a, waterRule(a)), "shrink.water")
}

func waterRule(a map[string]string) string {
	return "[shrink]\nmethod = \"water\"\nbasis = \"net\"\nover_dry = \"dry-matter\"\nover_dry_floor = \"3 %\"\ntrigger = \"" + a["to"] + " %\"\nto = \"" + a["to"] + " %\""
}

func pointsTaken(t *testing.T, a map[string]string) *big.Rat {
	a["from"] = add(figure(a["points"]), rat(10, 1)).FloatString(2)
	return exact(t, settled(t, a, "[shrink]\nmethod = \"per-point\"\nbasis = \"net\"\nover_dry = \"none\"\nstep = \"continuous\"\ntrigger = \"10 %\"\nto = \"10 %\"\nrate = \""+a["rate"]+" %/pt\""), "shrink.water")
}

func settled(t *testing.T, a map[string]string, tables ...string) *settle.Settlement {
	t.Helper()
	return mustSettle(t, corn(a["weight"], a["from"]), unrounded(t, tables...))
}

// unrounded is a scene that takes a moisture as it is typed.
func unrounded(t *testing.T, tables ...string) *rates.Edition {
	return scene(t, append(tables, "[rounding]\nmoisture = \"exact\"\nweight = \"0.0001 half-up\"\nquantity = \"0.0001 half-up\"\nmoney = \"0.01 half-up\"")...)
}

// exact is a step's figure before it is rounded.
func exact(t *testing.T, s *settle.Settlement, id string) *big.Rat {
	t.Helper()
	step, ok := s.Sheet.Step(id)
	if !ok {
		t.Fatalf("no step %s", id)
	}
	return step.Exact().Rat()
}

// reckon works out plain arithmetic exactly.
func reckon(t *testing.T, n ast.Expr) *big.Rat {
	t.Helper()
	switch n := n.(type) {
	case *ast.BasicLit:
		return figure(n.Value)
	case *ast.ParenExpr:
		return reckon(t, n.X)
	case *ast.BinaryExpr:
		x, y := reckon(t, n.X), reckon(t, n.Y)
		switch n.Op {
		case token.ADD:
			return add(x, y)
		case token.SUB:
			return minus(x, y)
		case token.MUL:
			return times(x, y)
		case token.QUO:
			return over(x, y)
		}
	}
	t.Fatalf("cannot reckon %T", n)
	return nil
}
