package settle_test

import (
	"errors"
	"math/big"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"
)

// The oracle is a second settlement, written from the trade's rules and the
// keys of the edition files alone: exact fractions, none of the engine's code,
// no step shared with it. Where the two agree on every line of a hundred
// thousand loads, a mistake would have to have been made twice.

// oracleEdition is an edition as the oracle reads it: the file's own keys.
type oracleEdition struct {
	Edition struct {
		ID, Commodity, Format string
		Order                 []string
		AfterWeight           string `toml:"after_weight_discount"`
		AcceptedRefusal       string `toml:"accepted_refusal"`
	}
	Units struct {
		Weight, Settle, Bushel string
	}
	Rounding map[string]string
	Dockage  struct{ Untested, Round string }
	Shrink   struct {
		Method, Basis, Trigger, To, Rate, Step, Round string
		OverDry                                       string `toml:"over_dry"`
		OverDryFloor                                  string `toml:"over_dry_floor"`
		RoundPercent                                  string `toml:"round_percent"`
		Row                                           []oracleRow
	}
	Handling struct {
		Method, Rate, Round string
		Always              bool
	}
	Drying struct {
		Method, Basis, Trigger, To, Rate, Step, Minimum, Round string
		Band                                                   []oracleRow
	}
	Discount []oracleDiscount
	Factor   []struct{ ID, Unit, Record string } // of the house
	Shares   struct{ Remainder string }
}

type oracleDiscount struct {
	ID, Factor, Form, Of, Basis, Untested string
	Base, Side, Per, Part, Cap            string
	Discount, Premium, Round              string
	Refuse                                bool
	RefuseOver                            string `toml:"refuse_over"`
	RefuseUnder                           string `toml:"refuse_under"`
	RoundUnit                             string `toml:"round_unit"`
	Row                                   []oracleRow
}

type oracleRow struct {
	From, Over, Upto, Under         string
	Shrink, Rate, Discount, Premium string
	Refuse                          bool
}

func (d oracleDiscount) name() string {
	if d.ID != "" {
		return d.ID
	}
	return d.Factor
}

const editionsFolder = "../../schedules/editions"

// editionFiles are the shipped editions and those of testdata, which have what no shipped one has:
// name to text.
func editionFiles(t testing.TB) map[string][]byte {
	t.Helper()
	names, err := filepath.Glob(editionsFolder + "/*.toml")
	more, moreErr := filepath.Glob("testdata/editions/*.toml")
	if err := errors.Join(err, moreErr); err != nil || len(names) < 15 || len(more) < 2 {
		t.Fatalf("found %d editions and %d of testdata: %v", len(names), len(more), err)
	}
	names = append(names, more...)
	out := map[string][]byte{}
	for _, name := range names {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		out[filepath.Base(name)] = text
	}
	return out
}

func readOracleEdition(t testing.TB, text []byte) *oracleEdition {
	t.Helper()
	e := &oracleEdition{}
	if err := toml.Unmarshal(inDollars(text), e); err != nil {
		t.Fatal(err)
	}
	return e
}

var centsIn = regexp.MustCompile(`"(\d+)(\.\d+)? c/`)

// inDollars is an edition with its rates in cents written in dollars.
func inDollars(text []byte) []byte {
	return centsIn.ReplaceAllFunc(text, func(quoted []byte) []byte {
		number, _, _ := strings.Cut(strings.Trim(string(quoted), `"`), " ")
		dollars := new(big.Rat).Quo(figure(number), big.NewRat(100, 1))
		return []byte(`"` + dollars.FloatString(6) + " $/")
	})
}

// placeOf is a line's own rounding, or the edition's.
func (e *oracleEdition) placeOf(own, key string) string {
	if own != "" {
		return own
	}
	return e.Rounding[key]
}

// figure is the number in front of the unit in "0.045 $/bu/pt".
func figure(text string) *big.Rat {
	number, _, _ := strings.Cut(text, " ")
	r, ok := new(big.Rat).SetString(number)
	if !ok {
		panic("oracle: no figure in " + text)
	}
	return r
}

func unitIn(text string) string {
	_, unit, _ := strings.Cut(text, " ")
	return unit
}

// roundTo rounds as an edition says it: "0.01 half-up".
func roundTo(x *big.Rat, rule string) *big.Rat {
	if rule == "" || rule == "exact" || rule == "continuous" {
		return x
	}
	step, way, _ := strings.Cut(rule, " ")
	size := figure(step)
	steps := new(big.Rat).Quo(new(big.Rat).Abs(x), size)
	whole, rest := new(big.Int).QuoRem(steps.Num(), steps.Denom(), new(big.Int))
	twice := new(big.Int).Lsh(rest, 1).Cmp(steps.Denom()) // rest against a half
	up := false
	switch way {
	case "up":
		up = rest.Sign() > 0
	case "half-up":
		up = twice >= 0
	case "half-even":
		up = twice > 0 || twice == 0 && whole.Bit(0) == 1
	case "down":
	default:
		panic("oracle: rounding " + rule)
	}
	if up {
		whole.Add(whole, big.NewInt(1))
	}
	out := new(big.Rat).Mul(new(big.Rat).SetInt(whole), size)
	if x.Sign() < 0 {
		out.Neg(out)
	}
	return out
}

// holds reports whether a value lies in a row: from and upto take their end in,
// over and under leave it out.
func (r oracleRow) holds(x *big.Rat) bool {
	return !(r.From != "" && x.Cmp(figure(r.From)) < 0 ||
		r.Over != "" && x.Cmp(figure(r.Over)) <= 0 ||
		r.Upto != "" && x.Cmp(figure(r.Upto)) > 0 ||
		r.Under != "" && x.Cmp(figure(r.Under)) >= 0)
}

func rowOf(rows []oracleRow, x *big.Rat) (oracleRow, bool) {
	for _, r := range rows {
		if r.holds(x) {
			return r, true
		}
	}
	return oracleRow{}, false
}
