package yard

import (
	"slices"
	"strings"
	"testing"

	"tenthpoint/internal/load"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session/sessiontest"
	"tenthpoint/ui/yard/board"
)

// arrive types a truck in and leaves it on the yard.
func arrive(t *testing.T, y *Yard, truck string, more ...[2]string) {
	t.Helper()
	y.TakeNew()
	fillIn(y.Form(), [][2]string{{"grower", "123"}, {"commodity", "corn"}, {"truck", truck}, {"gross", "52300"}})
	fillIn(y.Form(), more)
	sessiontest.Must(t, y.Form().Commit())
	y.Refresh()
}

func keys(y *Yard) string {
	var out []string
	for _, row := range y.Rows() {
		out = append(out, row.Key+" "+row.Truck)
	}
	return strings.Join(out, ", ")
}

// A truck keeps its key until it leaves, and the next one takes the free place.
func TestTrucksKeepTheirKeys(t *testing.T) {
	r := sessiontest.EmptyDemo(t)
	y := NewYard(r.Session)
	for _, truck := range []string{"A", "B", "C"} {
		arrive(t, y, truck)
	}
	if got := keys(y); got != "F2 A, F3 B, F4 C" {
		t.Fatalf("the yard is %s", got)
	}
	y.TakePlace(1)
	y.Refuse()
	r.Answer(map[string]string{"reason": "musty"})
	if got := keys(y); got != "F2 A, F4 C" {
		t.Errorf("after B left the yard is %s", got)
	}
	arrive(t, y, "D")
	if got := keys(y); got != "F2 A, F3 D, F4 C" {
		t.Errorf("after D came the yard is %s", got)
	}
	for _, truck := range strings.Split("EFGHIJKLMNOPQ", "") {
		arrive(t, y, truck)
	}
	if got := keys(y); !strings.HasPrefix(got, "F2 A, F3 D, F4 C, F5 E, F6 F, F7 G, F8 H, F9 I, Ctrl+F2 J, Ctrl+F3 K") || !strings.HasSuffix(got, "Ctrl+F9 Q") {
		t.Errorf("sixteen trucks are %s", got)
	}
	arrive(t, y, "R")
	if got := keys(y); !strings.HasSuffix(got, ",  R") {
		t.Errorf("the seventeenth truck is at the end of %s", got)
	}
	if again := keys(NewYard(r.Session)); !strings.HasPrefix(again, "F2 A, F3 C, F4 D") {
		t.Errorf("another desk on the book has %s", again)
	}
}

// Two trucks are half done at once, and nothing typed on either is lost by
// going to the other.
func TestNothingIsLostBetweenTrucks(t *testing.T) {
	r := sessiontest.EmptyDemo(t)
	y := NewYard(r.Session)
	arrive(t, y, "A")
	arrive(t, y, "B")
	y.TakePlace(0)
	y.Form().Type("moisture", "17.2")
	y.Form().Type("tare", "99999") // not valid: above the gross
	y.Form().Type("price", "4.1x")
	y.TakePlace(1)
	y.Form().Type("moisture", "15.1")
	y.TakePlace(0)
	if f := y.Form(); f.Text("moisture") != "17.2" || f.Text("price") != "4.1x" {
		t.Errorf("truck A has moisture %q, price %q", f.Text("moisture"), f.Text("price"))
	}
	y.TakePlace(1)
	if f := y.Form(); f.Text("moisture") != "15.1" || f.Text("price") != "" {
		t.Errorf("truck B has moisture %q, price %q", f.Text("moisture"), f.Text("price"))
	}
}

// A blank form with a text that is not valid keeps it until somebody comes back.
func TestBlankFormWaits(t *testing.T) {
	r := sessiontest.EmptyDemo(t)
	y := NewYard(r.Session)
	arrive(t, y, "A")
	y.TakeNew()
	y.Form().Type("gross", "12x")
	y.TakePlace(0)
	y.TakeNew()
	if got := y.Form().Text("gross"); got != "12x" || y.Form().ID() != "" {
		t.Errorf("the blank form has gross %q as load %q", got, y.Form().ID())
	}
}

// Each truck says what it waits for and how long.
func TestNextAct(t *testing.T) {
	r := sessiontest.EmptyDemo(t)
	y := NewYard(r.Session)
	arrive(t, y, "A")
	tests := []struct {
		field, text, want string
		state             model.State
	}{
		{"gross", "52300", "test the sample", model.Missing},
		{"moisture", "17.2", "weigh it empty", model.Missing},
		{"tare", "24120", "issue the ticket", model.OK},
		{"heating", "yes", "look at the form", model.Stop},
		{"heating", "no", "issue the ticket", model.OK},
		{"grower", "", "say whose and what", model.Missing},
	}
	for _, tt := range tests {
		y.Form().Type(tt.field, tt.text)
		row := y.Rows()[0]
		if row.Next.Text != tt.want || row.Next.State != tt.state || !row.Current {
			t.Errorf("after %s %q the truck waits for %+v, want %s", tt.field, tt.text, row.Next, tt.want)
		}
	}
	refused := board.NextAct(r.Session.Language, &load.Load{Phase: load.TurnedAway}, false)
	issued := board.NextAct(r.Session.Language, &load.Load{Phase: load.Ticketed, Number: 12}, true)
	if refused.State != model.Stop || issued.State != model.Locked || !strings.Contains(issued.Text, "12") {
		t.Errorf("refused %+v, issued %+v", refused, issued)
	}
}

// The keys go round the yard both ways.
func TestStepGoesRound(t *testing.T) {
	r := sessiontest.EmptyDemo(t)
	y := NewYard(r.Session)
	y.Step(+1) // an empty yard has nowhere to go
	for _, truck := range []string{"A", "B", "C"} {
		arrive(t, y, truck)
	}
	y.TakeNew()
	var seen []string
	for _, by := range []int{+1, +1, +1, +1, -1, -1} {
		y.Step(by)
		seen = append(seen, y.Form().Text("truck"))
	}
	if want := []string{"A", "B", "C", "A", "C", "B"}; !slices.Equal(seen, want) {
		t.Errorf("went %v, want %v", seen, want)
	}
}

// A truck opened again is focused where it was left: on the figure that is half typed, else on the
// first that is missing, else on the one edited last.
func TestATruckTakenUpAgain(t *testing.T) {
	r := sessiontest.EmptyDemo(t)
	f := NewLoadForm(r.Session, nil)
	fillIn(f, wholeCorn[:4])
	f.Type("tare", "2412.5") // no division of the scale: it stays on the form
	sessiontest.Must(t, f.Commit())
	if at := f.FirstToDo(); at != "tare" {
		t.Errorf("with a tare half typed work goes on in %q", at)
	}
	f.Restore("tare")
	if at := f.FirstToDo(); at != "moisture" {
		t.Errorf("without a moisture work goes on in %q", at)
	}
	fillIn(f, wholeCorn[4:])
	f.Type("gross", "52280")
	sessiontest.Must(t, f.Commit())
	if at := f.FirstToDo(); at != "gross" {
		t.Errorf("on a whole load work goes on in %q", at)
	}
}

// What keeps a ticket back is named with the figure that cannot be used first.
func TestTheRefusedFigureIsNamedFirst(t *testing.T) {
	f := corn(sessiontest.EmptyDemo(t), "tare")
	f.Type("moisture", "614.2")
	if why := f.Now.WhyNotIssue(); !strings.HasPrefix(why, "Moisture ") || strings.Count(why, "Moisture") != 1 {
		t.Errorf("the ticket is kept back by %q", why)
	}
}

// A truck that nobody wrote to keeps its form as it is when the yard is read again: reading it anew
// would ask the book about it at every key.
func TestUnchangedTrucksAreNotReadAgain(t *testing.T) {
	y := NewYard(sessiontest.DemoRoom(t, 40).Session)
	first, second := y.Rows()[0].ID, y.Rows()[1].ID
	y.Take(first)
	y.Take(second)
	sessiontest.Must(t, y.forms[first].Reload())
	was, read := y.forms[first].Book, y.forms[first].Now
	y.Refresh()
	if y.forms[first].Book != was || y.forms[first].Now != read {
		t.Error("the form of an unchanged truck was read again")
	}
}

// Moving a truck swaps its key with its neighbour's; sorting deals the keys anew, by wait and then by
// what is to be done. Both outlive the program.
func TestTheYardIsArranged(t *testing.T) {
	r := sessiontest.EmptyDemo(t)
	y := NewYard(r.Session)
	arrive(t, y, "A")
	arrive(t, y, "B", [2]string{"moisture", "15.0"})
	arrive(t, y, "C")
	y.TakePlace(2)
	arranging{y}.move(-1)
	if got := keys(y); got != "F2 A, F3 C, F4 B" {
		t.Errorf("C moved up: %s", got)
	}
	if again := keys(NewYard(r.Reopen().Session)); again != "F2 A, F3 C, F4 B" {
		t.Errorf("begun again the yard is %s", again)
	}
	arranging{y}.sort()
	if got := keys(y); got != "F2 A, F3 B, F4 C" {
		t.Errorf("sorted by wait: %s", got)
	}
	arranging{y}.sort()
	if got := keys(y); got != "F2 B, F3 A, F4 C" {
		t.Errorf("sorted by what is to be done: %s", got)
	}
}
