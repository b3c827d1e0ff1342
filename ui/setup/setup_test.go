package setup

import (
	"slices"
	"strings"
	"testing"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
	"tenthpoint/ui/session/sessiontest"
	"tenthpoint/ui/yard"
)

// firstSheet holds the values a new elevator types.
var firstSheet = [][2]string{
	{"business", "Example Siding"}, {"street", "1 Example Road"}, {"town", "Nowhere"}, {"phone", "555-0101"},
	{"grain.corn", "main"}, {"person", "Ann Example"},
}

func setField(t *testing.T, s *SetUp, id string) model.Field {
	t.Helper()
	f, ok := session.Find(s.Fields(), func(f model.Field) bool { return f.ID == id })
	if !ok {
		t.Fatalf("the sheet has no field %s", id)
	}
	return f
}

// A new book is set up by one sheet, and who filled it in is the manager.
func TestFirstSetUp(t *testing.T) {
	r := sessiontest.EmptyRoom(t)
	s := NewSetUp(r.Session)
	if !s.IsFirst() || !r.Session.IsNew() {
		t.Fatal("a new book is not new")
	}
	for i, field := range firstSheet {
		s.Save()
		if r.State != model.Stop || r.Screen != "" {
			t.Fatalf("with %d of %d fields the sheet was written: %q", i, len(firstSheet), r.Last())
		}
		s.Type(field[0], field[1])
	}
	if s.FirstMissing() != "" {
		t.Fatalf("a whole sheet lacks %s", s.FirstMissing())
	}
	s.Save()
	sessiontest.WantSaid(t, r, model.OK, "the elevator is set up")
	p := r.Session.Desk.Profile()
	if p.Business != "Example Siding" || len(p.Grains) != 1 || p.Grains[0] != (elevator.GrainRule{Commodity: "corn", Schedule: "main"}) || p.WeightUnit().String() != "lb" || p.RetainDays != 3 {
		t.Errorf("the book has %+v", p)
	}
	if who := r.Session.Desk.Who(); who.Name != "Ann Example" || who.Role != elevator.Manager || r.Screen != "yard" {
		t.Errorf("at the desk is %+v, the screen is %q", who, r.Screen)
	}
	if NewSetUp(r.Session).Save(); r.State != model.OK {
		t.Errorf("the sheet as it stands cannot be written again: %s", r.Last())
	}
}

// Rates that are invented say so beside every commodity they settle.
func TestExampleRatesAreMarked(t *testing.T) {
	r := sessiontest.EmptyRoom(t)
	s := NewSetUp(r.Session)
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

// Invalid text on the sheet gets a message.
func TestSetUpAnswersWhatIsTyped(t *testing.T) {
	r := sessiontest.EmptyRoom(t)
	tests := []struct{ id, text, want string }{
		{"division", "twenty", "is not a number"},
		{"capacity", "60t", "is in t, not in lb"},
		{"grain.corn", "posted", `There are no rates called "posted" for Corn`},
	}
	for _, tt := range tests {
		s := NewSetUp(r.Session)
		for _, field := range firstSheet {
			s.Type(field[0], field[1])
		}
		s.Type(tt.id, tt.text)
		if f := setField(t, s, tt.id); f.State != model.Stop || !strings.Contains(f.Note, tt.want) {
			t.Errorf("%s %q says %q, want %q", tt.id, tt.text, f.Note, tt.want)
		}
		if s.Save(); r.State != model.Stop || !r.Session.IsNew() {
			t.Errorf("%s %q was written: %s", tt.id, tt.text, r.Last())
		}
	}
}

// The sheet asks for whom a ticket prints copies; more than are printed is refused.
func TestCopiesInTheSetUp(t *testing.T) {
	r := sessiontest.EmptyRoom(t)
	s := NewSetUp(r.Session)
	for _, field := range firstSheet {
		s.Type(field[0], field[1])
	}
	s.Type("copies", "driver, office ,landlord,")
	s.Save()
	if got := r.Session.Desk.Profile().CopiesFor; !slices.Equal(got, []string{"driver", "office", "landlord"}) {
		t.Errorf("copies are for %q", got)
	}
	s.Type("copies", "a,b,c,d,e,f,g")
	if missing, err := s.check("copies"); missing || err == nil {
		t.Errorf("seven copies: %v, %v", missing, err)
	}
	s.Type("copies", "")
	s.Save()
	if got := r.Session.Desk.Profile().CopiesFor; len(got) != 0 {
		t.Errorf("an empty list leaves copies for %q", got)
	}
}

// An elevator that weighs in kilograms has every weight in kilograms.
func TestSetUpInKilograms(t *testing.T) {
	r := sessiontest.EmptyRoom(t)
	s := NewSetUp(r.Session)
	for _, field := range append(firstSheet, [2]string{"unit", "kg"}, [2]string{"division", "10"}, [2]string{"capacity", "60,000"}, [2]string{"grain.corn", "metric"}) {
		s.Type(field[0], field[1])
	}
	s.Save()
	f := yard.NewLoadForm(r.Session, nil)
	if got := sessiontest.FieldOf(t, f, "gross").Unit; got != "kg" {
		t.Errorf("gross is asked in %s", got)
	}
	f.Type("gross", "23,715")
	if got := sessiontest.FieldOf(t, f, "gross"); got.State != model.Stop || !strings.Contains(got.Note, "10 kg") {
		t.Errorf("half a division says %q", got.Note)
	}
}

// The scale's link is told apart from what is none while it is typed, and is listened to once it is
// recorded.
func TestLinkInTheSetUp(t *testing.T) {
	r := sessiontest.DemoRoom(t, 1)
	station := &sessiontest.FakeStation{Memory: map[string]string{}}
	r.Session.Station = station
	s := NewSetUp(r.Session)
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
	if s.Save(); r.State != model.Stop || r.Session.Desk.Profile().Scales[0].Link != "" {
		t.Errorf("a link without a port was written: %s", r.Last())
	}
	s.Type("link", "tcp://192.0.2.10:4001")
	if s.Save(); r.Session.Desk.Profile().Scales[0].Link != "tcp://192.0.2.10:4001" || station.Linked != 1 {
		t.Errorf("said %q; the book has %q, listened %d times", r.Last(), r.Session.Desk.Profile().Scales[0].Link, station.Linked)
	}
}

// What was changed on another screen since the sheet was filled in stays changed when the sheet is
// recorded for something else.
func TestSetUpPutsNothingBack(t *testing.T) {
	r := sessiontest.DemoRoom(t, 1)
	r.Session.Station = &sessiontest.FakeStation{Memory: map[string]string{}}
	s := NewSetUp(r.Session)
	p := r.Session.Desk.Profile()
	p.Scales = slices.Clone(p.Scales)
	p.Scales[0].Division, p.Scales[0].Link = sessiontest.Lb(50), "tcp://192.0.2.10:4001"
	sessiontest.Must(t, scalehouse.SetProfile(t.Context(), r.Session.Desk, p))
	s.Type("phone", "555-0199")
	s.Save()
	p = r.Session.Desk.Profile()
	if scale := p.Scales[0]; p.Phone != "555-0199" || scale.Division.Figure() != "50" || scale.Link != "tcp://192.0.2.10:4001" {
		t.Errorf("said %q; the book has phone %s, division %s, link %q", r.Last(), p.Phone, scale.Division, scale.Link)
	}
}

// A new elevator's sheet is restored, and forgotten once it is stored.
func TestSetUpStandsAsItWas(t *testing.T) {
	r := sessiontest.EmptyRoom(t)
	s := NewSetUp(r.Session)
	s.Type("unit", "kg")
	s.Type("division", "x")
	for _, field := range firstSheet[:3] {
		s.Type(field[0], field[1])
	}
	next := r.Reopen()
	after := NewSetUp(next.Session)
	for _, want := range s.Fields() {
		if got := setField(t, after, want.ID); got.Value != want.Value || got.Note != want.Note || got.State != want.State {
			t.Errorf("%s is %+v, was %+v", want.ID, got, want)
		}
	}
	next.Session.Drafts().SayBack()
	sessiontest.WantSaid(t, next, model.Plain, "here again: the set-up.")
	after.Type("division", "10")
	for _, field := range firstSheet {
		after.Type(field[0], field[1])
	}
	after.Save()
	sessiontest.WantSaid(t, next, model.OK, "the elevator is set up")
	if left := next.Drafts(); len(left) > 0 {
		t.Errorf("after it was written there is %q", left)
	}
}

// One key takes the example rates of every grain that has none, and leaves a choice that was made.
func TestTakeAllExamples(t *testing.T) {
	r := sessiontest.EmptyRoom(t)
	s := NewSetUp(r.Session)
	s.Type(grainField("corn"), "other")
	if !canTakeExamples(s) {
		t.Fatal("no examples are offered")
	}
	takeExamples(s)
	for _, g := range s.grains {
		want := g.example()
		if g.commodity == "corn" {
			want = "other"
		}
		if got := s.values[g.id]; got != want {
			t.Errorf("%s is settled under %q, want %q", g.commodity, got, want)
		}
	}
	if canTakeExamples(s) {
		t.Error("examples are offered again")
	}
}

// The limit of waiting is set here, within a day; the usual one stays unwritten.
func TestWaitLimitInTheSetUp(t *testing.T) {
	r := sessiontest.EmptyDemo(t)
	s := NewSetUp(r.Session)
	for _, text := range []string{"x", "0.5", "-3", "1441"} {
		s.Type("wait", text)
		if got := s.FirstMissing(); got != "wait" {
			t.Errorf("a limit of %q is taken", text)
		}
	}
	for _, c := range []struct {
		text       string
		kept, used int
	}{{"45", 0, 45}, {"30", 30, 30}, {"", 0, 45}} {
		s.Type("wait", c.text)
		s.Save()
		if p := r.Session.Desk.Profile(); p.WaitMinutes != c.kept || p.WaitLimit() != c.used {
			t.Errorf("a limit of %q is kept as %d and used as %d", c.text, p.WaitMinutes, p.WaitLimit())
		}
	}
}

// The preview has what is typed, before it is saved.
func TestThePreviewFollows(t *testing.T) {
	s := NewSetUp(sessiontest.EmptyDemo(t).Session)
	s.Type("business", "Previewed Siding")
	if slip := sessiontest.WordsOf(session.SlipPages(previewOf(s))); !strings.Contains(slip, "Previewed Siding") {
		t.Errorf("the preview says\n%s", slip)
	}
}
