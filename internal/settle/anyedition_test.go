package settle_test

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tenthpoint/internal/rates"
	"tenthpoint/internal/settle"
)

// TestOracleAgreesOnAnyEdition draws editions, not only loads: every method,
// basis, order, step and rounding in any mixture. What the reader lets through
// never stops the program and settles on both sides alike.
func TestOracleAgreesOnAnyEdition(t *testing.T) {
	read, settled := 0, 0
	checkOften(t, func(rt *rapid.T) {
		text := anyEdition{rt}.text()
		engine, err := rates.Read("drawn.toml", []byte(text))
		if err != nil {
			return // refused with a message; the broken files test those
		}
		read++
		e := readOracleEdition(t, []byte(text))
		for n := range uint64(4) {
			l := e.randomLoad(rand.New(rand.NewPCG(rapid.Uint64().Draw(rt, "load"), n)))
			s, err := settle.Settle(l.facts(e), engine)
			if problem := disagreement(s, err, workOracle(e, l)); problem != "" {
				rt.Fatalf("%s (engine: %v)\nload %+v\n%s", problem, err, l, text)
			}
			if err == nil {
				settled++
			}
		}
	})
	t.Logf("%d editions read, %d loads settled", read, settled)
	if read == 0 || settled == 0 {
		t.Errorf("%d editions read, %d loads settled", read, settled)
	}
}

// anyEdition draws the text of an edition of corn or barley.
type anyEdition struct{ *rapid.T }

func (a anyEdition) one(what string, of ...string) string {
	return rapid.SampledFrom(of).Draw(a.T, what)
}

func (a anyEdition) tenths(what string, low, high int) string {
	n := rapid.IntRange(low, high).Draw(a.T, what)
	return fmt.Sprintf("%d.%d", n/10, n%10)
}

func (a anyEdition) rounding(what string, steps ...string) string {
	return a.one(what, steps...) + " " + a.one(what+" rule", "half-up", "half-even", "down", "up")
}

func (a anyEdition) flip(what string) bool { return rapid.Bool().Draw(a.T, what) }

func (a anyEdition) text() string {
	var b strings.Builder
	grain := a.one("grain", "corn", "barley")
	weight, settle := a.one("weight", "lb", "kg"), a.one("settle", "bu", "cwt", "t")
	bushel := map[string]string{"lb": "48 lb/bu", "kg": "21.7724 kg/bu"}[weight]
	discounts := a.discounts()
	fmt.Fprintf(&b, "[edition]\nid = \"drawn\"\ntitle = \"drawn\"\nschedule = \"drawn\"\ncommodity = %q\nstatus = \"example\"\nfrom = \"2026-08-01\"\norder = [%s]\n%s", grain, a.order(grain), a.format())
	b.WriteString("\n[origin]\nissued = \"2026-08-01\"\nby = \"drawn\"\ndocument = \"none\"\n")
	fmt.Fprintf(&b, "\n[units]\nweight = %q\nsettle = %q\ncurrency = \"USD\"\nbushel = %q\nbushel_source = \"drawn\"\n", weight, settle, bushel)
	fmt.Fprintf(&b, "\n[rounding]\nmoisture = %q\nweight = %q\nquantity = %q\nmoney = %q\n",
		a.rounding("moisture", "0.1", "0.5"), a.rounding("weight place", "1", "10", "0.1"), a.rounding("quantity", "0.01", "0.001", "0.5"), a.rounding("money", "0.01", "0.05"))
	if grain == "barley" {
		fmt.Fprintf(&b, "\n[dockage]\nuntested = %q\n%s", a.one("untested", "none", "refuse"), a.ownRound("1", "5"))
	}
	b.WriteString(a.shrink() + a.handling() + a.drying() + discounts)
	fmt.Fprintf(&b, "\n[shares]\nremainder = %q\n", a.one("remainder", "first", "last", "largest"))
	return b.String()
}

func (a anyEdition) format() string {
	if a.flip("format 1") {
		return ""
	}
	return fmt.Sprintf("format = \"2\"\nafter_weight_discount = %q\n%s", a.one("after weight", "dry", "settled"),
		a.one("accepted", "", "accepted_refusal = \"last-row\"\n", "accepted_refusal = \"nothing\"\n"))
}

func (a anyEdition) ownRound(steps ...string) string {
	if !a.flip("own round") {
		return ""
	}
	return fmt.Sprintf("round = %q\n", a.rounding("round", steps...))
}

func (a anyEdition) order(grain string) string {
	rest := rapid.Permutation([]string{"shrink", "handling", "drying", "discounts", "discount.damage"}).Draw(a.T, "order")
	if s, h := slices.Index(rest, "shrink"), slices.Index(rest, "handling"); h < s {
		rest[s], rest[h] = rest[h], rest[s]
	}
	if grain == "barley" {
		rest = append([]string{"dockage"}, rest...)
	}
	return `"` + strings.Join(rest, `", "`) + `"`
}

func (a anyEdition) basis() string { return a.one("basis", "net", "clean", "dry", "left") }

// moistures are a trigger and a moisture at or below it.
func (a anyEdition) moistures() string {
	to := rapid.IntRange(100, 160).Draw(a.T, "to")
	trigger := to + rapid.IntRange(0, 15).Draw(a.T, "above")
	return fmt.Sprintf("trigger = \"%d.%d %%\"\nto = \"%d.%d %%\"\n", trigger/10, trigger%10, to/10, to%10)
}

func (a anyEdition) step() string {
	if a.flip("continuous") {
		return "continuous"
	}
	return a.rounding("step", "0.1", "0.5", "1")
}

func (a anyEdition) shrink() string {
	method := a.one("shrink", "none", "water", "per-point", "table")
	out := fmt.Sprintf("\n[shrink]\nmethod = %q\n%s", method, a.ownRound("1", "0.01"))
	if method == "none" {
		return out
	}
	out += fmt.Sprintf("basis = %q\n%s", a.one("shrink basis", "net", "clean", "left"), a.moistures())
	if a.flip("credit") {
		out += "over_dry = \"dry-matter\"\nover_dry_floor = \"" + a.tenths("driest", 60, 100) + " %\"\n"
	} else {
		out += "over_dry = \"none\"\n"
	}
	switch method {
	case "per-point":
		out += fmt.Sprintf("rate = \"%s %%/pt\"\nstep = %q\n", a.tenths("rate", 10, 30), a.step())
		if a.flip("round percent") {
			out += fmt.Sprintf("round_percent = %q\n", a.rounding("percent", "0.1", "0.01"))
		}
	case "table":
		out += "\n[[shrink.row]]\nupto = \"17.0 %\"\nshrink = \"1.5 %\"\n\n[[shrink.row]]\nover = \"17.0 %\"\nunder = \"22.0 %\"\nshrink = \"4 %\"\n\n[[shrink.row]]\nfrom = \"22.0 %\"\nshrink = \"9 %\"\n"
	}
	return out
}

func (a anyEdition) handling() string {
	method := a.one("handling", "none", "wet", "dried")
	out := fmt.Sprintf("\n[handling]\nmethod = %q\n%s", method, a.ownRound("1", "0.1"))
	if method != "none" {
		out += fmt.Sprintf("rate = \"%s %%\"\nalways = %v\n", a.tenths("handling rate", 0, 20), a.flip("always"))
	}
	return out
}

func (a anyEdition) drying() string {
	method := a.one("drying", "none", "per-point", "bands-each", "bands-whole")
	out := fmt.Sprintf("\n[drying]\nmethod = %q\n%s", method, a.ownRound("0.01", "0.05"))
	if method == "none" {
		return out
	}
	out += fmt.Sprintf("basis = %q\n%sstep = %q\n", a.basis(), a.moistures(), a.step())
	if a.flip("minimum") {
		out += "minimum = \"" + a.tenths("least", 0, 300) + " $\"\n"
	}
	unit := a.one("per", "$/bu/pt", "$/cwt/pt", "$/t/pt")
	if method == "per-point" {
		return out + fmt.Sprintf("rate = \"0.0%d %s\"\n", rapid.IntRange(1, 99).Draw(a.T, "drying rate"), unit)
	}
	flat := unit
	if method == "bands-whole" && a.flip("flat") {
		flat = strings.TrimSuffix(unit, "/pt")
	}
	return out + fmt.Sprintf("\n[[drying.band]]\nupto = \"17.0 %%\"\nrate = \"0.04 %s\"\n\n[[drying.band]]\nover = \"17.0 %%\"\nunder = \"20.0 %%\"\nrate = \"0.05 %s\"\n\n[[drying.band]]\nfrom = \"20.0 %%\"\nupto = \"26.2 %%\"\nrate = \"0.07 %s\"\n", flat, unit, flat)
}

// discounts are one rule on damage, which the order names, and some others.
func (a anyEdition) discounts() string {
	out := a.discount("damage")
	for _, factor := range []string{"heat-damage", "moisture"} {
		if a.flip(factor) {
			out += a.discount(factor)
		}
	}
	if a.flip("musty") {
		out += a.rule("musty", "yes-no", func(of string) string { return a.figure(of) + a.one("refuse", "", "refuse = true\n") })
	}
	return out
}

func (a anyEdition) discount(factor string) string {
	if a.flip("table") {
		return a.rule(factor, "table", func(of string) string {
			return "\n[[discount.row]]\nupto = \"5.0 %\"\n" + a.figure(of) + "\n[[discount.row]]\nover = \"5.0 %\"\nunder = \"15.0 %\"\n" + a.figure(of) + "\n[[discount.row]]\nfrom = \"15.0 %\"\n" + a.one("last", "refuse = true\n", a.figure(of))
		})
	}
	return a.rule(factor, "per-unit", func(of string) string {
		out := fmt.Sprintf("base = \"%s %%\"\nside = %q\nper = %q\npart = %q\n%s", a.tenths("base", 0, 160), a.one("side", "above", "below"),
			a.one("per", "0.1 %", "0.5 %", "1 %", "0.3 %"), a.one("part", "exact", "up", "down", "nearest"), a.figure(of))
		if a.flip("limit") {
			out += "refuse_over = \"14.0 %\"\n"
		}
		if a.flip("lower limit") {
			out += "refuse_under = \"2.0 %\"\n"
		}
		return out
	})
}

func (a anyEdition) rule(factor, form string, rest func(of string) string) string {
	of := a.one("of", "money", "price", "weight")
	out := fmt.Sprintf("\n[[discount]]\nlabel = \"Rule on %s\"\nfactor = %q\nform = %q\nof = %q\nbasis = %q\nuntested = %q\n", factor, factor, form, of, a.basis(), a.one("untested rule", "none", "refuse"))
	if a.flip("round unit") {
		out += fmt.Sprintf("round_unit = %q\n", a.rounding("unit", "0.01", "0.001"))
	}
	return out + a.ownRound("0.01", "1") + rest(of)
}

func (a anyEdition) figure(of string) string {
	unit := "%"
	if of == "money" {
		unit = a.one("money per", "$/bu", "$/cwt", "$/t")
	}
	return fmt.Sprintf("%s = \"0.%02d %s\"\n", a.one("way", "discount", "discount", "premium"), rapid.IntRange(0, 40).Draw(a.T, "figure"), unit)
}
