package scaleticket_test

import (
	"math/big"
	"strings"
	"testing"

	"tenthpoint/internal/scaleticket"
	"tenthpoint/internal/tickettest"

	"pgregory.net/rapid"
)

// A figure is read back from the paper by rules of its own, apart from the
// package that wrote it.
func read(t rapid.TB, value string) *big.Rat {
	t.Helper()
	text, _, _ := strings.Cut(value, " ")
	text = strings.NewReplacer("−", "-", "$", "", ",", "", "+", "").Replace(text)
	r, ok := new(big.Rat).SetString(text)
	if !ok {
		t.Fatalf("%q is not a figure", value)
	}
	return r
}

func isFigure(l scaleticket.Line) bool {
	number, _, _ := strings.Cut(l.Value, " ")
	figure := strings.ContainsAny(number, "0123456789")
	return figure && (l.Kind == scaleticket.Pair || l.Kind == scaleticket.Total)
}

// added adds the signed figures of a section between two fields, as an eye does, and compares the
// sum with the last.
func added(t rapid.TB, name string, s scaleticket.Section, from, to string) {
	t.Helper()
	var sum *big.Rat
	for _, l := range s.Lines {
		switch {
		case l.Field == from:
			sum = read(t, l.Value)
		case sum == nil || !isFigure(l):
		case l.Field == to:
			if got := read(t, l.Value); got.Cmp(sum) != 0 {
				t.Errorf("%s: the column from %s adds to %s, and %s says %s", name, from, sum.FloatString(4), l.Label, l.Value)
			}
			return
		case l.Field == "net-value": // a sum on the way
			if got := read(t, l.Value); got.Cmp(sum) != 0 {
				t.Errorf("%s: the column from %s adds to %s, and %s says %s", name, from, sum.FloatString(4), l.Label, l.Value)
			}
		default:
			sum.Add(sum, read(t, l.Value))
		}
	}
	t.Errorf("%s: no column from %s to %s", name, from, to)
}

// checkSums adds every column of a settled ticket.
func checkSums(t rapid.TB, name string, ticket scaleticket.Ticket) {
	t.Helper()
	d := scaleticket.Compose(ticket)
	settlement, _ := d.Section("settlement")
	added(t, name, settlement, "net", "dry")
	for _, l := range settlement.Lines {
		if l.Field == "settled" {
			added(t, name, settlement, "dry", "settled")
		}
	}
	if isPriced(settlement) {
		added(t, name, settlement, "value", "payable")
	} else {
		added(t, name, charges(settlement), "price", "adjustments")
	}
	checkWeight(t, name, d)
	checkShares(t, name, d)
}

// isPriced reports whether the column of a settlement begins with a value.
func isPriced(s scaleticket.Section) bool {
	for _, l := range s.Lines {
		if l.Field == "value" {
			return true
		}
	}
	return false
}

// charges is a settlement whose price comes later: its column begins at zero.
func charges(s scaleticket.Section) scaleticket.Section {
	out := scaleticket.Section{}
	for _, l := range s.Lines {
		if l.Field == "price" {
			l.Value = "0"
		}
		out.Lines = append(out.Lines, l)
	}
	return out
}

func checkWeight(t rapid.TB, name string, d scaleticket.Document) {
	t.Helper()
	weight, _ := d.Section("weight")
	sum := new(big.Rat)
	for _, l := range weight.Lines {
		switch {
		case l.Field == "net":
			if read(t, l.Value).Cmp(sum) != 0 {
				t.Errorf("%s: the weights add to %s, net says %s", name, sum.FloatString(2), l.Value)
			}
		case isFigure(l):
			sum.Add(sum, read(t, l.Value))
		}
	}
}

func checkShares(t rapid.TB, name string, d scaleticket.Document) {
	t.Helper()
	shares, ok := d.Section("shares")
	if !ok {
		return
	}
	sum := new(big.Rat)
	for _, l := range shares.Lines[:len(shares.Lines)-1] {
		if isFigure(l) { // an owner may have no price
			sum.Add(sum, read(t, l.Value))
		}
	}
	if last := shares.Lines[len(shares.Lines)-1]; read(t, last.Value).Cmp(sum) != 0 {
		t.Errorf("%s: the shares add to %s, not to %s", name, sum.FloatString(4), last.Value)
	}
}

func TestColumnsAdd(t *testing.T) {
	settled := 0
	for _, c := range tickettest.Table {
		if ticket := c.Make(t); ticket.Settlement != nil {
			settled++
			checkSums(t, c.Name, ticket)
		}
	}
	if settled < 10 {
		t.Errorf("only %d tickets of the table are settled", settled)
	}
}

// TestAnyTicketAdds composes tickets nobody thought of: their columns add.
func TestAnyTicketAdds(t *testing.T) {
	editions := tickettest.Editions(t)
	seen := map[string]int{}
	rapid.Check(t, func(rt *rapid.T) {
		ticket := tickettest.AnyTicket(rt, t, editions)
		if ticket.Settlement == nil {
			seen["not settled"]++
			return
		}
		seen["settled"]++
		checkSums(rt, "random ticket", ticket)
	})
	if seen["settled"] == 0 || seen["not settled"] == 0 {
		t.Errorf("the random tickets were %v", seen)
	}
}
