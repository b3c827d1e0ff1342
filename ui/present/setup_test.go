package present

import (
	"slices"
	"strings"
	"testing"

	"tenthpoint/internal/house"
	"tenthpoint/ui/model"
)

// firstSheet is what a new elevator types.
var firstSheet = [][2]string{
	{"business", "Example Siding"}, {"street", "1 Example Road"}, {"town", "Nowhere"}, {"phone", "555-0101"},
	{"grain.corn", "main"}, {"person", "Ann Example"},
}

func setField(t *testing.T, s *SetUp, id string) model.Field {
	t.Helper()
	f, ok := find(s.Fields(), func(f model.Field) bool { return f.ID == id })
	if !ok {
		t.Fatalf("the sheet has no field %s", id)
	}
	return f
}

// A new book is set up by one sheet, and who filled it in is the manager.
func TestFirstSetUp(t *testing.T) {
	r := emptyRoom(t)
	s := NewSetUp(r.frame)
	if !s.IsFirst() || !r.frame.IsNew() {
		t.Fatal("a new book is not new")
	}
	for i, field := range firstSheet {
		s.Save()
		if r.state != model.Stop || r.screen != "" {
			t.Fatalf("with %d of %d fields the sheet was written: %q", i, len(firstSheet), r.last())
		}
		s.Type(field[0], field[1])
	}
	if s.FirstMissing() != "" {
		t.Fatalf("a whole sheet lacks %s", s.FirstMissing())
	}
	s.Save()
	wantSaid(t, r, model.OK, "the elevator is set up")
	p := r.frame.Desk.Profile()
	if p.Business != "Example Siding" || len(p.Grains) != 1 || p.Grains[0] != (house.GrainRule{Commodity: "corn", Schedule: "main"}) || p.WeightUnit().String() != "lb" || p.RetainDays != 3 {
		t.Errorf("the book has %+v", p)
	}
	if who := r.frame.Desk.Who(); who.Name != "Ann Example" || who.Role != house.Manager || r.screen != "yard" {
		t.Errorf("at the desk is %+v, the screen is %q", who, r.screen)
	}
	if NewSetUp(r.frame).Save(); r.state != model.OK {
		t.Errorf("the sheet as it stands cannot be written again: %s", r.last())
	}
}

// Rates that are invented say so beside every commodity they settle.
func TestExampleRatesAreMarked(t *testing.T) {
	r := emptyRoom(t)
	s := NewSetUp(r.frame)
	s.Type("grain.corn", "main")
	if got := setField(t, s, "grain.corn").Reading; !strings.Contains(got, "not for trade") {
		t.Errorf("beside corn stands %q", got)
	}
	for _, o := range setField(t, s, "grain.corn").Options {
		if !strings.Contains(o.Detail, "not for trade") && !strings.Contains(o.Detail, "published rule") {
			t.Errorf("schedule %s is offered as %q", o.Code, o.Detail)
		}
	}
}

// What cannot stand on the sheet says why.
func TestSetUpAnswersWhatIsTyped(t *testing.T) {
	r := emptyRoom(t)
	tests := []struct{ id, text, want string }{
		{"division", "twenty", "is not a number"},
		{"capacity", "60t", "is in t, not in lb"},
		{"grain.corn", "posted", `There are no rates called "posted" for Corn`},
	}
	for _, tt := range tests {
		s := NewSetUp(r.frame)
		for _, field := range firstSheet {
			s.Type(field[0], field[1])
		}
		s.Type(tt.id, tt.text)
		if f := setField(t, s, tt.id); f.State != model.Stop || !strings.Contains(f.Note, tt.want) {
			t.Errorf("%s %q says %q, want %q", tt.id, tt.text, f.Note, tt.want)
		}
		if s.Save(); r.state != model.Stop || !r.frame.IsNew() {
			t.Errorf("%s %q was written: %s", tt.id, tt.text, r.last())
		}
	}
}

// A house that weighs in kilograms has every weight in kilograms.
func TestSetUpInKilograms(t *testing.T) {
	r := emptyRoom(t)
	s := NewSetUp(r.frame)
	for _, field := range append(firstSheet, [2]string{"unit", "kg"}, [2]string{"division", "10"}, [2]string{"capacity", "60,000"}, [2]string{"grain.corn", "metric"}) {
		s.Type(field[0], field[1])
	}
	s.Save()
	f := newLoadForm(r.frame, nil)
	if got := fieldOf(t, f, "gross").Unit; got != "kg" {
		t.Errorf("gross is asked in %s", got)
	}
	f.Type("gross", "23,715")
	if got := fieldOf(t, f, "gross"); got.State != model.Stop || !strings.Contains(got.Note, "10 kg") {
		t.Errorf("half a division says %q", got.Note)
	}
}

// The scale's link is told apart from what is none while it is typed, and is
// listened to once it is written down.
func TestLinkInTheSetUp(t *testing.T) {
	r := demoRoom(t, 1)
	station := &desktop{memory: map[string]string{}}
	r.frame.Station = station
	s := NewSetUp(r.frame)
	for link, wrong := range map[string]string{
		"": "", "tcp://192.0.2.10:4001": "", "serial:///dev/ttyUSB0": "", "serial://COM3?baud=1200": "",
		"192.0.2.10:4001": "begins with tcp://", "http://192.0.2.10": "begins with tcp://",
		"tcp://192.0.2.10": "its port", "tcp://:4001": "address", "tcp://192.0.2.10:99999": "1 to 65535",
		"serial://": "names no port", "serial:///dev/ttyUSB0?baud=fast": "300 and 230400",
	} {
		s.Type("link", link)
		f := setField(t, s, "link")
		if wrong == "" && (f.State == model.Stop || f.Missing) || wrong != "" && (f.State != model.Stop || !strings.Contains(f.Note, wrong)) {
			t.Errorf("%q: state %v, %q; want %q", link, f.State, f.Note, wrong)
		}
	}
	s.Type("link", "tcp://192.0.2.10")
	if s.Save(); r.state != model.Stop || r.frame.Desk.Profile().Scales[0].Link != "" {
		t.Errorf("a link without a port was written: %s", r.last())
	}
	s.Type("link", "tcp://192.0.2.10:4001")
	if s.Save(); r.frame.Desk.Profile().Scales[0].Link != "tcp://192.0.2.10:4001" || station.linked != 1 {
		t.Errorf("said %q; the book has %q, listened %d times", r.last(), r.frame.Desk.Profile().Scales[0].Link, station.linked)
	}
}

// What was changed on another screen since the sheet was filled in stays changed
// when the sheet is written down for something else.
func TestSetUpPutsNothingBack(t *testing.T) {
	r := demoRoom(t, 1)
	r.frame.Station = &desktop{memory: map[string]string{}}
	s := NewSetUp(r.frame)
	p := r.frame.Desk.Profile()
	p.Scales = slices.Clone(p.Scales)
	p.Scales[0].Division, p.Scales[0].Link = lb(50), "tcp://192.0.2.10:4001"
	must(t, r.frame.Desk.SetProfile(t.Context(), p))
	s.Type("phone", "555-0199")
	s.Save()
	p = r.frame.Desk.Profile()
	if scale := p.Scales[0]; p.Phone != "555-0199" || scale.Division.Figure() != "50" || scale.Link != "tcp://192.0.2.10:4001" {
		t.Errorf("said %q; the book has phone %s, division %s, link %q", r.last(), p.Phone, scale.Division, scale.Link)
	}
}

// A new elevator's sheet stands as it was, and is forgotten once it is written.
func TestSetUpStandsAsItWas(t *testing.T) {
	r := emptyRoom(t)
	s := NewSetUp(r.frame)
	s.Type("unit", "kg")
	s.Type("division", "x")
	for _, field := range firstSheet[:3] {
		s.Type(field[0], field[1])
	}
	next := r.again()
	after := NewSetUp(next.frame)
	for _, want := range s.Fields() {
		if got := setField(t, after, want.ID); got.Value != want.Value || got.Note != want.Note || got.State != want.State {
			t.Errorf("%s is %+v, was %+v", want.ID, got, want)
		}
	}
	next.frame.Drafts().SayBack()
	wantSaid(t, next, model.Plain, "here again: the set-up.")
	after.Type("division", "10")
	for _, field := range firstSheet {
		after.Type(field[0], field[1])
	}
	after.Save()
	wantSaid(t, next, model.OK, "the elevator is set up")
	if left := next.drafts(); len(left) > 0 {
		t.Errorf("after it was written there is %q", left)
	}
}
