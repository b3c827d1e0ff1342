package growers

import (
	"context"
	"fmt"
	"strings"
	"testing"

	"tenthpoint/internal/demo"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session/sessiontest"
	ticketspkg "tenthpoint/ui/tickets"
)

func TestGrowersNarrow(t *testing.T) {
	r := sessiontest.DemoRoom(t, 40)
	g := NewGrowers(r.Session)
	g.Reload()
	all := len(g.Rows())
	if all < 30 || g.Counted() != fmt.Sprint(all, " growers") || g.Chosen() != g.Rows()[0].Key {
		t.Errorf("%d growers, %s, %q in hand", all, g.Counted(), g.Chosen())
	}
	for _, c := range []struct {
		line string
		want []string
	}{
		{"114", []string{"114"}},
		{"farm", []string{"103", "110", "117"}},
		{"quill creek", []string{"117"}},
		{"creek quill", []string{"117"}},
		{"XMP 101", []string{"101"}},
		{"zebra", nil},
	} {
		g.Type(c.line)
		var got []string
		for _, row := range g.Rows() {
			got = append(got, row.Key)
		}
		if strings.Join(got, " ") != strings.Join(c.want, " ") {
			t.Errorf("%q finds %q, want %q", c.line, got, c.want)
		}
		if len(c.want) > 0 && g.Chosen() != c.want[0] || len(c.want) == 0 && g.HasChosen() {
			t.Errorf("%q leaves %q in hand", c.line, g.Chosen())
		}
	}
	if !strings.Contains(g.Empty(), "Ctrl+G") || g.Card() != nil {
		t.Errorf("nobody: %q", g.Empty())
	}
	if !g.Clear() || g.Clear() || len(g.Rows()) != all {
		t.Error("the line was not emptied once")
	}
}

func TestGrowersEmptyBook(t *testing.T) {
	g := NewGrowers(sessiontest.EmptyRoom(t).Session)
	g.Reload()
	if !strings.Contains(g.Empty(), "No grower is written down yet") || g.Counted() != "0 growers" {
		t.Errorf("an empty book says %q, %q", g.Empty(), g.Counted())
	}
}

// The card says what the book has: shares, trucks, contracts, and the season
// as the account adds it up.
func TestGrowerCard(t *testing.T) {
	r := sessiontest.DemoRoom(t, 400)
	g := NewGrowers(r.Session)
	g.Type("102")
	text := sessiontest.TextOf(g.Card())
	account, err := office.Account(context.Background(), r.Session.Desk, "102", quantity.MustDate("2025-06-01"), quantity.Date{})
	sessiontest.Must(t, err)
	want := []string{"Beatrix Holloway", "grower 102", "Rural route", "| 2/3 |", "Estate of R. Pomfret | 1/3", "DELIVERED SINCE 2025-06-01"}
	for _, part := range account.Parts {
		want = append(want, part.Name+" | "+part.Sum.Quantity.String(), "Payable | "+part.Sum.Payable.String())
	}
	for _, w := range want {
		if !strings.Contains(text, w) {
			t.Errorf("the card does not say %q:\n%s", w, text)
		}
	}
	if len(account.Parts) == 0 {
		t.Error("the test grower has brought nothing")
	}
	contract := false
	for _, one := range r.Session.Known().Growers {
		g.Type(one.ID)
		contract = contract || strings.Contains(sessiontest.TextOf(g.Card()), "CONTRACTS")
	}
	if !contract {
		t.Error("no card shows a contract")
	}
}

// A stored tare is old after thirty days, not on the thirtieth.
func TestOldTares(t *testing.T) {
	r := sessiontest.DemoRoom(t, 0)
	for days, old := range map[int]bool{0: false, 30: false, 31: true, 400: true} {
		tare := quantity.Int(25_000, quantity.Lb)
		truck := elevator.Truck{ID: "900", Plate: "XMP 900", Grower: "101", Tare: &tare, Taken: r.Session.Desk.Today().AddDays(-days)}
		sessiontest.Must(t, scalehouse.SetTruck(context.Background(), r.Session.Desk, truck))
		r.Session.Changed()
		g := NewGrowers(r.Session)
		g.Type("101")
		if row := g.Rows()[0]; old != (row.State == model.Warn) || old != strings.Contains(row.Cells[4], "900") {
			t.Errorf("after %d days the row says %q", days, row.Cells[4])
		}
		if text := sessiontest.TextOf(g.Card()); old != strings.Contains(text, "weigh it empty again") {
			t.Errorf("after %d days the card says:\n%s", days, text)
		}
	}
}

func TestAddGrower(t *testing.T) {
	r := sessiontest.DemoRoom(t, 0)
	g := NewGrowers(r.Session)
	g.Reload()
	g.Add()
	if wrong := r.Answer(map[string]string{"code": "101", "name": "Other"}); !strings.Contains(wrong["code"], "Abner Quist") {
		t.Errorf("a code that is taken gives %q", wrong)
	}
	r.Answer(map[string]string{"code": "200", "name": "Fern Hollow", "address": "Lane 2"})
	sessiontest.WantSaid(t, r, model.OK, "Fern Hollow is written down as 200")
	if g.Chosen() != "200" || !strings.Contains(sessiontest.TextOf(g.Card()), "Lane 2") {
		t.Errorf("%q is in hand", g.Chosen())
	}
	g.Change()
	r.Answer(map[string]string{"name": "Fern Hollow Farm"})
	if one, _ := r.Session.Known().Grower("200"); one.Name != "Fern Hollow Farm" || one.Address != "Lane 2" {
		t.Errorf("the book has %+v", one)
	}
}

func TestSharesOfAGrower(t *testing.T) {
	r := sessiontest.DemoRoom(t, 0)
	g := NewGrowers(r.Session)
	g.Type("101")
	g.Shares()
	for _, c := range []struct {
		title string
		typed map[string]string
		field string
	}{
		{"too little", map[string]string{"owner1": "101", "share1": "1/3"}, "share1"},
		{"too much", map[string]string{"owner1": "101", "share1": "60", "owner2": "901", "share2": "50"}, "share1"},
		{"nobody's", map[string]string{"share1": "1/3"}, "owner1"},
		{"no number", map[string]string{"owner1": "101", "share1": "half"}, "share1"},
	} {
		if wrong := r.Answer(c.typed); wrong[c.field] == "" {
			t.Errorf("%s: %q", c.title, wrong)
		}
	}
	r.Answer(map[string]string{"owner1": "101", "share1": "2/3", "owner2": "901", "share2": "1/3"})
	if text := sessiontest.TextOf(g.Card()); !strings.Contains(text, "Abner Quist | 2/3") || g.Rows()[0].Cells[2] != "2/3, 1/3" {
		t.Errorf("afterward the card says:\n%s", text)
	}
	g.Shares()
	r.Answer(map[string]string{"owner1": "", "share1": "", "owner2": "", "share2": ""})
	if text := sessiontest.TextOf(g.Card()); !strings.Contains(text, "The whole of every load") {
		t.Errorf("without shares the card says:\n%s", text)
	}
}

// A grower with more owners than the sheet usually asks for keeps them all.
func TestSharesOfMany(t *testing.T) {
	r := sessiontest.DemoRoom(t, 0)
	fifth := func(code string) elevator.Share {
		return elevator.Share{GrowerID: code, Parts: quantity.Int(1, quantity.Plain), Of: quantity.Int(5, quantity.Plain)}
	}
	many := elevator.Grower{ID: "300", Name: "Five Heirs", Shares: []elevator.Share{fifth("901"), fifth("902"), fifth("903"), fifth("904"), fifth("905")}}
	sessiontest.Must(t, scalehouse.SetGrower(context.Background(), r.Session.Desk, many))
	g := NewGrowers(r.Session)
	g.Type("300")
	g.Shares()
	r.Answer(nil)
	if one, _ := r.Session.Known().Grower("300"); len(one.Shares) != 5 {
		t.Errorf("afterward there are %d owners", len(one.Shares))
	}
}

func TestTruckOfAGrower(t *testing.T) {
	r := sessiontest.DemoRoom(t, 0)
	g := NewGrowers(r.Session)
	g.Type("123")
	g.AddTruck()
	for field, typed := range map[string]map[string]string{
		"number": {"number": "1"},
		"tare":   {"number": "500", "tare": "25,010"}, // between two divisions
		"taken":  {"number": "500", "tare": "25,000", "taken": "2025-12-01"},
	} {
		if wrong := r.Answer(typed); wrong[field] == "" {
			t.Errorf("%v is taken: %q", typed, wrong)
		}
	}
	r.Answer(map[string]string{"number": "500", "plate": "XMP 500", "tare": "25,000"})
	truck, ok := r.Session.Known().Truck("500")
	if !ok || truck.Grower != "123" || truck.Tare.String() != "25,000 lb" || truck.Taken != r.Session.Desk.Today() {
		t.Errorf("the book has %+v", truck)
	}
	g.ChangeTruck()
	if len(trucksOf(g.session, "123")) > 1 {
		r.Answer(map[string]string{"truck": "500"})
	}
	r.Answer(map[string]string{"tare": "", "taken": ""})
	if truck, _ := r.Session.Known().Truck("500"); truck.Tare != nil || truck.Plate != "XMP 500" {
		t.Errorf("afterward the book has %+v", truck)
	}
}

func TestContractOfAGrower(t *testing.T) {
	r := sessiontest.DemoRoom(t, 0)
	sessiontest.Must(t, r.Session.Desk.SignIn(demo.Clerk))
	g := NewGrowers(r.Session)
	g.Type("101")
	g.AddContract()
	whole := map[string]string{"number": "T-1", "commodity": "corn", "quantity": "5,000", "price": "4.15", "until": "2025-12-31", "who": demo.Manager}
	for field, text := range map[string]string{"quantity": "some", "price": "0", "until": "soon"} {
		typed := map[string]string{}
		for k, v := range whole {
			typed[k] = v
		}
		typed[field] = text
		if wrong := r.Answer(typed); wrong[field] == "" {
			t.Errorf("%s %q is taken", field, text)
		}
	}
	r.Answer(whole)
	sessiontest.WantSaid(t, r, model.OK, "contract T-1")
	if text := sessiontest.TextOf(g.Card()); !strings.Contains(text, "T-1, Corn | 5,000 bu left") {
		t.Errorf("the card says:\n%s", text)
	}
	if who := r.Session.Desk.Who().Name; who != demo.Clerk {
		t.Errorf("afterward %s is at the desk", who)
	}
}

func TestTicketsOfAGrower(t *testing.T) {
	r := sessiontest.DemoRoom(t, 60)
	tickets := ticketspkg.NewTickets(r.Session)
	g := NewGrowers(r.Session)
	g.Type("101")
	g.TicketsOf()
	if r.Screen != "tickets" || tickets.Line() != "grower 101" {
		t.Errorf("on screen %q the line is %q", r.Screen, tickets.Line())
	}
}

// A farm is written onto the card with its split; another card takes the place of one that ends.
func TestFarmsAndTakeover(t *testing.T) {
	r := sessiontest.DemoRoom(t, 20)
	g := NewGrowers(r.Session)
	g.Reload()
	codes := []string{g.Rows()[0].Key, g.Rows()[1].Key}
	g.Choose(codes[0])
	askFarm(g)
	if wrong := r.Answer(map[string]string{"farm": "Creek", "owner1": codes[0], "share1": "1/2 drying 1/1", "owner2": codes[1], "share2": "1/2 drying none"}); len(wrong) > 0 {
		t.Fatalf("refused: %v", wrong)
	}
	one, _ := g.grower()
	if len(one.Farms) != 1 || one.Farms[0].Shares[1].Drying == nil {
		t.Errorf("farms %+v", one.Farms)
	}
	found := false
	for _, line := range g.Card() {
		found = found || strings.HasPrefix(line.Left, "Creek")
	}
	if !found {
		t.Error("the card does not show the farm")
	}
	before := len(g.Rows())
	askTakeover(g)
	r.Answer(map[string]string{"into": codes[1], "kind": "merged", "reason": "written down twice", "who": r.Session.Managers()[0].Code})
	if len(g.Rows()) != before-1 || g.Chosen() != codes[1] {
		t.Errorf("%d rows, chosen %s: %s", len(g.Rows()), g.Chosen(), r.Last())
	}
}

// A lender's notice is written down on the grower's card and taken off it when it ends.
func TestLienOfAGrower(t *testing.T) {
	r := sessiontest.DemoRoom(t, 40)
	g := NewGrowers(r.Session)
	g.Reload()
	g.Choose("103")
	onCard := func() bool {
		for _, line := range g.Card() {
			if strings.Contains(line.Left, "Prairie Lending") {
				return true
			}
		}
		return false
	}
	addLien(g)
	if wrong := r.Answer(map[string]string{"holder": "Prairie Lending (invented)", "until": "soon"}); wrong["until"] == "" {
		t.Error("a last day that is none is taken")
	}
	r.Answer(map[string]string{"holder": "Prairie Lending (invented)", "until": r.Session.Desk.Today().AddDays(90).String()})
	if !onCard() || len(liens(g)) != 1 || liens(g)[0].Grower != "103" {
		t.Errorf("the card does not show the notice: %v", liens(g))
	}
	endLien(g)
	r.Answer(map[string]string{"why": "released"})
	if onCard() || len(liens(g)) != 0 {
		t.Errorf("the notice is still on the card: %v", liens(g))
	}
}
