package equipment

import (
	"context"
	"errors"
	"path/filepath"
	"strings"
	"testing"

	"tenthpoint/internal/audit"
	"tenthpoint/internal/book"
	"tenthpoint/internal/book/sqlite"
	"tenthpoint/internal/demo"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/office/scalelog"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
	"tenthpoint/ui/session/sessiontest"
)

func gearRoom(t *testing.T, loads int) (*Equipment, *sessiontest.Room, *sessiontest.FakeStation) {
	r := sessiontest.DemoRoom(t, loads)
	station := &sessiontest.FakeStation{Memory: map[string]string{}}
	r.Session.Station = station
	return NewEquipment(r.Session), r, station
}

// dial is an indicator that shows what a test says.
type dial struct {
	weight quantity.Amount
	atRest bool
	err    error

	condition session.Condition
}

func (d dial) Latest() (session.Display, error) {
	condition := d.condition
	if !d.atRest && condition == session.AtRest {
		condition = session.Moving
	}
	return session.Display{Weight: d.weight, Condition: condition}, d.err
}

func (d dial) Weigh(context.Context) (quantity.Amount, error) { return d.weight, d.err }

func TestEquipmentScaleShows(t *testing.T) {
	g, r, _ := gearRoom(t, 0)
	weight := quantity.Int(52_300, quantity.Lb)
	for _, c := range []struct {
		title string
		link  string
		shows session.Indicator
		want  model.Status
		says  string
	}{
		{"typed", "", nil, model.Status{State: model.Plain, Text: "weights are typed"}, "simulated scale stand in"},
		{"not opened", "tcp://10.0.0.1:4001", nil, model.Status{State: model.Stop, Text: "no link"}, "could not be opened"},
		{"silent", "tcp://10.0.0.1:4001", dial{err: errors.New("nothing has come for 5 s")}, model.Status{State: model.Stop, Text: "no reading"}, "nothing has come for 5 s."},
		{"moving", "tcp://10.0.0.1:4001", dial{weight: weight}, model.Status{State: model.Wait, Text: "52,300 lb, MOTION"}, "The indicator is read"},
		{"at rest", "tcp://10.0.0.1:4001", dial{weight: weight, atRest: true}, model.Status{State: model.OK, Text: "52,300 lb, at rest"}, "The indicator is read"},
		{"over", "tcp://10.0.0.1:4001", dial{condition: session.Over}, model.Status{State: model.Stop, Text: "OVER"}, "nothing is weighed so"},
		{"net", "tcp://10.0.0.1:4001", dial{weight: weight, condition: session.Net}, model.Status{State: model.Stop, Text: "52,300 lb, NET"}, "nothing is weighed so"},
	} {
		p := r.Session.Desk.Profile()
		p.Scales = []elevator.Scale{{ID: "1", Division: quantity.Int(20, quantity.Lb), Capacity: quantity.Int(120_000, quantity.Lb), Link: c.link}}
		sessiontest.Must(t, scalehouse.SetProfile(context.Background(), r.Session.Desk, p))
		r.Session.Indicator = c.shows
		if row := g.Scales()[0]; row.State != c.want.State || row.Cells[4] != c.want.Text {
			t.Errorf("%s: shows %d %q", c.title, row.State, row.Cells[4])
		}
		if said := g.ScaleSaid(); !strings.Contains(said.Text, c.says) {
			t.Errorf("%s: says %q", c.title, said.Text)
		}
		if g.IsListening() != (c.shows != nil) {
			t.Errorf("%s: listening is %v", c.title, g.IsListening())
		}
	}
}

func TestEquipmentWithoutAnything(t *testing.T) {
	g := NewEquipment(sessiontest.EmptyRoom(t).Session)
	if len(g.Scales())+len(g.People())+len(g.Bins()) != 0 || !strings.Contains(g.ScaleSaid().Text, "No scale is set up") {
		t.Errorf("an empty book says %q", g.ScaleSaid().Text)
	}
	if text := sessiontest.TextOf(g.Card()); !strings.Contains(text, "Ctrl+K") || !strings.Contains(text, "Ctrl+J") {
		t.Errorf("the card says:\n%s", text)
	}
	g.AskPapers()
}

func TestEquipmentChangeScale(t *testing.T) {
	g, r, station := gearRoom(t, 0)
	sessiontest.Must(t, r.Session.Desk.SignIn(demo.Clerk))
	g.AskScale("1")
	for field, typed := range map[string]map[string]string{
		"division": {"division": "twenty", "who": demo.Manager}, "capacity": {"capacity": "0", "who": demo.Manager},
		"link": {"link": "usb", "who": demo.Manager}, "who": {"link": ""},
	} {
		if wrong := r.Answer(typed); wrong[field] == "" {
			t.Errorf("%v is taken", typed)
		}
	}
	r.Answer(map[string]string{"capacity": "140,000", "link": "tcp://10.0.0.40:4001", "who": demo.Manager})
	if s := r.Session.Desk.Profile().Scales[0]; s.Capacity.String() != "140,000 lb" || s.Link != "tcp://10.0.0.40:4001" || station.Linked != 1 {
		t.Errorf("the book has %+v, linked %d times", s, station.Linked)
	}
	sessiontest.WantSaid(t, r, model.OK, "scale 1 is written down")
	station.LinkErr = errors.New("there is nobody at 10.0.0.40")
	g.AskScale("")
	r.Answer(map[string]string{"name": "2", "who": demo.Manager})
	sessiontest.WantSaid(t, r, model.Warn, "nobody at 10.0.0.40")
	if rows := g.Scales(); len(rows) != 2 || rows[1].Cells[0] != "2" {
		t.Errorf("the scales are %+v", rows)
	}
}

// deck is a simulated deck that notes what rolls.
type deck struct{ rolled []string }

func (d *deck) RollOn(w quantity.Amount) error { d.rolled = append(d.rolled, w.String()); return nil }
func (d *deck) RollOff()                       { d.rolled = append(d.rolled, "off") }

func TestEquipmentSimulatedScale(t *testing.T) {
	g, r, station := gearRoom(t, 0)
	if !g.CanSimulate() || g.CanRoll() {
		t.Error("the invented elevator may not simulate, or rolls without a deck")
	}
	g.Simulate()
	r.Answer(nil)
	if r.Session.Desk.Profile().Scales[0].Link != elevator.SimulatedLink || station.Linked != 1 || g.Scales()[0].Cells[3] != "simulated" {
		t.Errorf("the link is %q", r.Session.Desk.Profile().Scales[0].Link)
	}
	on := &deck{}
	r.Session.Deck, r.Session.Indicator = on, dial{weight: quantity.Zero(quantity.Lb)}
	if said := g.ScaleSaid(); said.State != model.Warn || !strings.Contains(said.Text, "not for trade") {
		t.Errorf("a simulated scale says %+v", said)
	}
	g.Roll()
	if wrong := r.Answer(map[string]string{"weight": "52,310"}); wrong["weight"] == "" {
		t.Error("a weight between two divisions rolls on")
	}
	r.Answer(map[string]string{"weight": "52,300"})
	g.Roll()
	if strings.Join(on.rolled, ", ") != "52,300 lb, off" {
		t.Errorf("rolled %q", on.rolled)
	}
	g.Simulate()
	r.Answer(nil)
	if link := r.Session.Desk.Profile().Scales[0].Link; link != "" {
		t.Errorf("afterward the link is %q", link)
	}
}

func TestEquipmentPeople(t *testing.T) {
	g, r, _ := gearRoom(t, 0)
	g.AskPerson("")
	r.Answer(map[string]string{"name": "Tove Lindqvist", "role": "tester"})
	sessiontest.WantSaid(t, r, model.OK, "Tove Lindqvist is tester")
	if len(g.People()) != 5 {
		t.Errorf("%d people", len(g.People()))
	}
	g.AskPerson("Tove Lindqvist")
	r.Answer(map[string]string{"role": "clerk", "gone": model.TickOn})
	sessiontest.WantSaid(t, r, model.OK, "no longer works here")
	if len(g.People()) != 4 {
		t.Errorf("afterward %d people", len(g.People()))
	}
	g.AskPerson(demo.Manager)
	r.Answer(map[string]string{"role": "clerk"})
	sessiontest.WantSaid(t, r, model.Stop, "only manager")
}

func TestEquipmentBins(t *testing.T) {
	g, r, _ := gearRoom(t, 0)
	before := len(g.Bins())
	g.AskBin("")
	if wrong := r.Answer(map[string]string{"code": "P1", "name": "Pit"}); !strings.Contains(wrong["code"], "Pit 1") {
		t.Errorf("a code that is taken gives %q", wrong)
	}
	r.Answer(map[string]string{"code": "B9", "name": "Bin 9", "grain": "oats"})
	g.AskBin("B9")
	r.Answer(map[string]string{"name": "Bin 9, north"})
	bins := g.Bins()
	if len(bins) != before+1 {
		t.Errorf("%d bins, before %d", len(bins), before)
	}
	for _, row := range bins {
		if row.Key == "B9" && strings.Join(row.Cells, ", ") != "B9, Bin 9, north, Oats" {
			t.Errorf("the bin shows %q", row.Cells)
		}
	}
}

func TestEquipmentPapers(t *testing.T) {
	g, r, station := gearRoom(t, 0)
	g.AskPapers()
	r.Answer(map[string]string{"way": session.ToQueue, "queue": "broken"})
	sessiontest.WantSaid(t, r, model.Stop, "no queue called broken")
	if station.Memory[papersWay] != "" {
		t.Error("a way that failed is remembered")
	}
	g.AskPapers()
	r.Answer(map[string]string{"way": session.ToQueue, "queue": "scale house"})
	if station.Way != session.ToQueue || station.Queue != "scale house" || !strings.Contains(sessiontest.TextOf(g.Card()), "the print queue scale house") {
		t.Errorf("papers go %s %q; the card says:\n%s", station.Way, station.Queue, sessiontest.TextOf(g.Card()))
	}
}

// Slips go to a receipt printer as bytes of its own, in the columns and letters
// chosen here; everything else stays a page, and pages come back.
func TestGearReceiptRoll(t *testing.T) {
	g, r, station := gearRoom(t, 20)
	number, found, err := office.LastTicket(t.Context(), r.Session.Desk)
	if err != nil || !found {
		t.Fatal("the demo has no ticket")
	}
	for _, c := range []struct{ slips, letters, begins string }{
		{"page", "858", "%PDF"}, {"42", "858", "\x1b@\x1bt\x13"}, {"48", "1252", "\x1b@\x1bt\x10"}, {"page", "858", "%PDF"},
	} {
		g.AskPapers()
		r.Answer(map[string]string{"way": session.ToQueue, "queue": "scale house", "slips": c.slips, "letters": c.letters})
		clear(r.Papers)
		session.PrintTicket(r.Session, number)
		if len(r.Papers) != 1 {
			t.Fatalf("%d papers were printed: %s", len(r.Papers), r.Last())
		}
		for name, paper := range r.Papers {
			if !strings.HasPrefix(string(paper), c.begins) {
				t.Errorf("on %s %s, %s begins with %q", c.slips, c.letters, name, paper[:min(8, len(paper))])
			}
		}
	}
	if station.Memory[session.SlipColumns] != "" {
		t.Errorf("pages are remembered as %q columns", station.Memory[session.SlipColumns])
	}
}

// A backup is a book that opens, under the name and the minute; it is
// remembered, and older than today it is named.
func TestEquipmentBackup(t *testing.T) {
	g, r, station := gearRoom(t, 20)
	folder := t.TempDir()
	g.AskBackup()
	r.Answer(map[string]string{"folder": folder})
	sessiontest.WantSaid(t, r, model.OK, "the copy is sound")
	copies, err := filepath.Glob(filepath.Join(folder, "*-2025-10-14-1200.book"))
	sessiontest.Must(t, err)
	if len(copies) != 1 || len(station.Folders) != 1 {
		t.Fatalf("%q are there", copies)
	}
	book, err := sqlite.Open(copies[0], book.Options{ReadOnly: true})
	sessiontest.Must(t, err)
	sessiontest.Must(t, book.Close())
	if text := sessiontest.TextOf(g.Card()); !strings.Contains(text, "Last backup | 2025-10-14 12:00 | "+copies[0]) {
		t.Errorf("the card says:\n%s", text)
	}
	g.AskBackup()
	if f := r.Question().Fields[0]; f.Value != folder {
		t.Errorf("the next backup goes to %q", f.Value)
	}
	r.Answer(nil)
	sessiontest.WantSaid(t, r, model.Stop, "already")
	r.Session.Remember(backupLast, "2025-10-13 19:00\nsomewhere")
	if !hasMark(g.Card(), "Last backup") {
		t.Error("yesterday's backup is not named")
	}
}

func hasMark(lines []model.CardLine, left string) bool {
	_, found := session.Find(lines, func(l model.CardLine) bool {
		return strings.HasPrefix(l.Left, left) && l.Kind == model.CardMark
	})
	return found
}

func TestEquipmentVerify(t *testing.T) {
	g, r, _ := gearRoom(t, 20)
	g.Verify()
	sessiontest.WantSaid(t, r, model.OK, "the book is sound")
	if text := sessiontest.TextOf(g.Card()); !strings.Contains(text, "Last check | 2025-10-14 12:00, sound") || !strings.Contains(text, "settlements worked again") {
		t.Errorf("the card says:\n%s", text)
	}
	g.checked(audit.Soundness{Facts: 7, Problems: []message.Text{message.Words("Fact 3 was changed."), message.Words("Ticket 2 is missing.")}})
	sessiontest.WantSaid(t, r, model.Stop, "2 problems. The first: Fact 3 was changed.")
	if text := sessiontest.TextOf(g.Card()); !strings.Contains(text, "not sound") || !strings.Contains(text, "Ticket 2 is missing.") || !strings.Contains(text, "Do not mend it") {
		t.Errorf("the card says:\n%s", text)
	}
}

// A check that is stopped says so and is not remembered.
func TestEquipmentVerifyStopped(t *testing.T) {
	g, r, station := gearRoom(t, 0)
	stopped := &stoppedRoom{Room: r}
	r.Session.Window = stopped
	g.Verify()
	sessiontest.WantSaid(t, r, model.Warn, "stopped")
	if len(station.Memory) != 0 {
		t.Errorf("remembered is %q", station.Memory)
	}
}

// stoppedRoom is a window in which a person stops everything at once.
type stoppedRoom struct{ *sessiontest.Room }

func (s *stoppedRoom) Run(job model.Job) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	job.Done(job.Do(ctx, func(int, int) {}))
}

// A scale taken out of service is said so in the list and in its log, and a manager
// puts it back.
func TestScaleLogFromTheWindow(t *testing.T) {
	g, r, _ := gearRoom(t, 0)
	answer := func(entry string, values map[string]string) {
		t.Helper()
		g.Logs.Ask("1")
		r.Answer(map[string]string{"entry": entry})
		if wrong := r.Answer(values); len(wrong) > 0 {
			t.Fatalf("%s: %v", entry, wrong)
		}
	}
	g.Logs.Ask("1")
	r.Answer(map[string]string{"entry": "zero"})
	if wrong := r.Answer(map[string]string{"shown": "nothing"}); wrong["shown"] == "" {
		t.Errorf("letters were taken for a weight: %v", wrong)
	}
	answer("zero", map[string]string{"shown": "0"})
	answer("check", map[string]string{"known": "20,000", "shown": "20,020", "note": "20 test weights"})
	answer("certificate", map[string]string{"number": "C-118", "until": "2031-05-03", "seals": "40117"})
	answer("out", map[string]string{"note": "load cell 3"})
	if row := g.Scales()[0]; row.State != model.Stop {
		t.Errorf("out of service, the scale shows %v", row)
	}
	log, err := scalelog.Read(context.Background(), r.Session.Desk, "1")
	sessiontest.Must(t, err)
	if rows := scalelog.Rows(log); len(rows) != 4 || rows[1].Off != "20 lb" {
		t.Errorf("the log is %+v", rows)
	}
	answer("back", map[string]string{"note": "cell replaced"})
	if row := g.Scales()[0]; row.State == model.Stop {
		t.Errorf("back in service, the scale shows %v", row)
	}
	g.Logs.Print("1")
	if len(r.Papers["scale-1"]) == 0 {
		t.Errorf("the log was not printed: %q", r.Last())
	}
}

// An invented elevator offers a truck on a simulated scale, once; taken, the truck rolls on and the yard
// is in front.
func TestATruckIsOffered(t *testing.T) {
	g, r, station := gearRoom(t, 0)
	on := &deck{}
	offerTruck(g)
	r.Session.Deck = on // as linking leaves it
	r.Answer(nil)
	if r.Session.Desk.Profile().Scales[0].Link != elevator.SimulatedLink || station.Linked != 1 || r.Screen != "yard" || len(on.rolled) != 1 || on.rolled[0] != "52,300 lb" {
		t.Errorf("the link is %q, in front is %s, rolled %v", r.Session.Desk.Profile().Scales[0].Link, r.Screen, on.rolled)
	}
	asked := len(r.Asked)
	offerTruck(g)
	if len(r.Asked) != asked {
		t.Error("a truck is offered to a linked scale")
	}
}
