package daysheet

import (
	"fmt"
	"math/big"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
)

// read takes a printed figure back, by other means than it was printed by.
func read(cell string) (*big.Rat, bool) {
	return new(big.Rat).SetString(strings.ReplaceAll(cell, ",", ""))
}

// addable are the columns whose total is the sum of the lines above it.
// Averages and ticket numbers are not among them.
func addable(c report.Column) bool {
	for _, not := range []string{"Average", "Moist.", "Test wt.", "Ticket"} {
		if strings.HasPrefix(c.String(), not) {
			return false
		}
	}
	return c.Align == report.Right
}

type checker interface {
	Helper()
	Errorf(string, ...any)
}

// checkTotals compares every total of a table with the lines above it, up to the total before or
// the first line for which begins is true. What is struck does not count.
func checkTotals(t checker, table report.Table, begins func(line, total report.Row) bool) (totals int) {
	t.Helper()
	for i, total := range table.Rows {
		if total.Kind != report.Total {
			continue
		}
		totals++
		for c, column := range table.Columns {
			want, isFigure := read(total.Cells[c].String())
			if !addable(column) || !isFigure {
				continue
			}
			sum := new(big.Rat)
			for k := i - 1; k >= 0 && table.Rows[k].Kind != report.Total; k-- {
				line := table.Rows[k]
				if one, ok := read(line.Cells[c].String()); ok && line.Kind == report.Plain {
					sum.Add(sum, one)
				}
				if begins != nil && begins(line, total) {
					break
				}
			}
			if sum.Cmp(want) != 0 {
				t.Errorf("%s, %s: the total is %s, its lines add to %s", table.Name, column.Title, total.Cells[c], sum.FloatString(4))
			}
		}
	}
	return totals
}

// The totals of every table of the paper are the sums of the lines printed
// above them, whatever the day was like.
func TestTotalsAreTheSumOfTheLines(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		s := Make(drawnFacts(r))
		d := Compose(s, elevator.Profile{Business: "Test Elevator"})
		for _, table := range d.Tables() {
			begins := func(line, total report.Row) bool { return false }
			if strings.HasPrefix(table.Name.String(), "grain") {
				begins = func(line, total report.Row) bool {
					return strings.HasPrefix(total.Cells[0].String(), line.Cells[0].String())
				}
			}
			checkTotals(r, table, begins)
			if strings.HasPrefix(table.Name.String(), "tickets") && len(table.Rows) > 0 && table.Rows[len(table.Rows)-1].Kind != report.Total && countPlain(table) > 0 {
				r.Errorf("%s has lines and no total", table.Name)
			}
		}
	})
}

func countPlain(t report.Table) (n int) {
	for _, r := range t.Rows {
		if r.Kind == report.Plain {
			n++
		}
	}
	return n
}

// Test weights are averaged in each unit apart, by net weight; a sheet closed by an earlier version
// has those in pounds a bushel alone, as it had.
func TestTestWeightsInTheirUnit(t *testing.T) {
	ticket := func(number int64, net, weighs string, unit quantity.Unit) Ticket {
		k := Ticket{Number: number, Load: fmt.Sprintf("L%d", number), Day: day, Time: "13:00", Commodity: "corn", Name: "Corn", Grower: "Ada Field"}
		return recorded(k, map[string]quantity.Amount{
			"net": of(net, quantity.Kg), "dockage": of("0", quantity.Kg), "shrink.water": of("0", quantity.Kg), "handling": of("0", quantity.Kg),
			"settled": of(net, quantity.Kg), "quantity": of("1", quantity.Tonne), "moisture": of("15", quantity.Percent), "drying": of("0", quantity.Dollar),
			"charges": of("0", quantity.Dollar), "value": of("0", quantity.Dollar), "payable": of("0", quantity.Dollar), testWeightLine: of(weighs, unit),
		})
	}
	s := Make(Facts{Day: day, Last: 40, Tickets: []Ticket{
		ticket(41, "10000", "70", quantity.KgPerHL), ticket(42, "30000", "72", quantity.KgPerHL), ticket(43, "10000", "55.5", quantity.LbPerBushel),
	}})
	columns := func() map[string][]string {
		out := map[string][]string{}
		for _, table := range Compose(s, elevator.Profile{}).Tables() {
			for i, c := range table.Columns {
				for _, row := range table.Rows {
					out[c.Title.String()+" "+c.Unit] = append(out[c.Title.String()+" "+c.Unit], row.Cells[i].String())
				}
			}
		}
		return out
	}
	now := columns()
	if got := fmt.Sprint(now["Average test weight kg/hL"], now["Average test weight lb/bu"], now["Test wt. kg/hL"]); got != "[71.50] [55.50] [70.0 72.0  71.50]" {
		t.Errorf("the sheet has %s", got)
	}
	s.Closed = &Closing{By: "Mae Orton"}
	if old := columns(); len(old["Average test weight kg/hL"]) > 0 || len(old["Test wt. kg/hL"]) > 0 || fmt.Sprint(old["Average test weight lb/bu"]) != "[55.50]" {
		t.Errorf("a sheet closed before has %v", old)
	}
}

// The parts, places, dispositions, hours and the position are five ways of
// counting the same tickets.
func TestEveryWayOfCountingAgrees(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := drawnFacts(t)
		s := Make(f)
		counted, in, byPlace, byHour, byHow := 0, 0, 0, 0, 0
		for _, p := range s.Parts {
			counted += p.Sum.Loads
			if !p.Outbound {
				in += p.Sum.Loads
			}
		}
		for _, p := range s.Places {
			byPlace += p.Sum.Loads
		}
		for _, h := range s.Hours {
			byHour += h.In + h.Out
		}
		for _, d := range s.ByDisposition {
			byHow += d.Sum.Loads
		}
		if byPlace != counted || byHour != counted || byHow != in {
			t.Fatalf("loads: %d counted, %d by place, %d by hour; %d in, %d by disposition", counted, byPlace, byHour, in, byHow)
		}
		struck := 0
		for _, p := range s.Parts {
			struck += len(p.Struck)
		}
		if counted+struck != s.Numbers.Issued || len(f.Tickets) != s.Numbers.Issued+len(s.Later) {
			t.Fatalf("%d tickets: %d issued (%d count, %d struck), %d of earlier days", len(f.Tickets), s.Numbers.Issued, counted, struck, len(s.Later))
		}
		checkPosition(t, f, s)
	})
}

// checkPosition works the position out ticket by ticket.
func checkPosition(t *rapid.T, f Facts, s Sheet) {
	want := map[string]*big.Rat{}
	at := func(commodity, bin string, unit quantity.Unit) *big.Rat {
		key := fmt.Sprint(commodity, "|", bin, "|", unit)
		if want[key] == nil {
			want[key] = new(big.Rat)
		}
		return want[key]
	}
	for _, b := range f.Before {
		at(b.Commodity, b.Bin, b.Weight.Unit()).Add(at(b.Commodity, b.Bin, b.Weight.Unit()), b.Weight.Rat())
	}
	for _, k := range f.Tickets {
		a, sign := k.Figures["settled"], int64(1)
		if k.Outbound {
			a, sign = k.Figures["net"], -1
		}
		if k.Day == day && k.Ended == day {
			continue
		}
		if k.Day != day {
			sign = -sign
		}
		total := at(k.Commodity, k.Bin, a.Unit())
		total.Add(total, new(big.Rat).Mul(a.Rat(), big.NewRat(sign, 1)))
	}
	for _, m := range s.Moves {
		key := fmt.Sprint(m.Commodity, "|", m.Bin, "|", m.After.Unit())
		if want[key] == nil || want[key].Cmp(m.After.Rat()) != 0 {
			t.Fatalf("%s holds %s, want %v", key, m.After, want[key])
		}
		delete(want, key)
	}
	for key, left := range want {
		if left.Sign() != 0 {
			t.Fatalf("%s is left out; it holds %s", key, left)
		}
	}
}

// What happens to a ticket after a day does not change the sheet of the day.
func TestLaterActsLeaveTheSheetAlone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := drawnFacts(t)
		before := Make(f)
		for i, k := range f.Tickets {
			if k.Ended.IsZero() || k.Ended.After(day) {
				k.Ended, k.EndedBy, k.EndedWho, k.Reason = day.AddDays(rapid.IntRange(1, 9).Draw(t, "days")), 99, "Someone Else", "later"
				f.Tickets[i] = k
			}
		}
		after := Make(f)
		if a, b := Compose(before, elevator.Profile{}).Text(100), Compose(after, elevator.Profile{}).Text(100); a != b {
			t.Fatalf("the paper changed:\n%s\n%s", a, b)
		}
		if digestOf(t, before) != digestOf(t, after) {
			t.Fatal("the digest changed")
		}
	})
}

// The digest tells sheets apart that differ in any figure.
func TestDigestSeesEveryFigure(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := drawnFacts(t)
		if len(f.Tickets) == 0 {
			return
		}
		was := digestOf(t, Make(f))
		i := rapid.IntRange(0, len(f.Tickets)-1).Draw(t, "which")
		figures := map[string]quantity.Amount{}
		for id, a := range f.Tickets[i].Figures {
			figures[id] = a
		}
		figures["net"] = figures["net"].Add(quantity.Of("0.001", figures["net"].Unit()))
		f.Tickets[i].Figures = figures
		if digestOf(t, Make(f)) == was {
			t.Fatal("a figure changed and the digest did not")
		}
	})
}

func TestNumbersAccountedFor(t *testing.T) {
	k := func(n int64, ended string, by int64) Ticket {
		t := Ticket{Number: n, Day: day, EndedBy: by}
		if ended != "" {
			t.Ended = quantity.MustDate(ended)
		}
		return t
	}
	for _, c := range []struct {
		before  int64
		tickets []Ticket
		want    string
	}{
		{7, nil, "no ticket was issued"},
		{7, []Ticket{k(8, "", 0)}, "8, 1 in all: 1 in force, 0 void, 0 corrected; no number is missing"},
		{7, []Ticket{k(8, "", 0), k(9, "2026-10-03", 0), k(10, "2026-10-03", 11), k(11, "", 0)}, "8 to 11, 4 in all: 2 in force, 1 void, 1 corrected; no number is missing"},
		{7, []Ticket{k(10, "", 0), k(12, "", 0)}, "10 to 12, 2 in all: 2 in force, 0 void, 0 corrected; NOT OF THIS DAY: 8 to 9, 11"},
		{0, []Ticket{k(1, "", 0)}, "1, 1 in all: 1 in force, 0 void, 0 corrected; no number is missing"},
	} {
		if got := account(day, c.before, c.tickets).Message().String(); got != c.want {
			t.Errorf("got %q, want %q", got, c.want)
		}
	}
}
