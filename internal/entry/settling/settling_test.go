package settling_test

import (
	"errors"
	"slices"
	"testing"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/entry/settling"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/housetest"
	"tenthpoint/internal/tariff"
	"tenthpoint/schedules"
)

func must(t *testing.T, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

// house is one that takes corn, with the tariffs and levies of the program.
func house(t *testing.T) (settling.House, *housetest.Scene) {
	t.Helper()
	s := housetest.New(t).As(housetest.Manager)
	must(t, scalehouse.SetGrower(t.Context(), s.Desk, elevator.Grower{ID: "G1", Name: "Ada Field"}))
	tariffs, err := schedules.Tariffs()
	must(t, err)
	levies, err := schedules.Levies()
	must(t, err)
	return settling.House{
		House: office.NewEntering(t.Context(), s.Desk), Grain: "corn", Levies: levies,
		Tariff: func(id, grain string, day quantity.Date) (*tariff.Edition, error) {
			if e, known := tariffs.ByID(id); known {
				return e, nil
			}
			return tariff.InForce(tariffs, "main", grain, day)
		},
	}, s
}

func TestSheet(t *testing.T) {
	h, s := house(t)
	o, problems := settling.ReadSheet(map[string]string{
		"grower": "ada", "price": "4.05", "contract": "C-1", "sale": "on", "tariff": "corn-main-tariff-2026", "levies": "indiana-corn",
		"advances": "2000@2026-10-15; 500@2026-11-01", "payees": "First Bank; Second Bank", "pay-after": "2027-01-04", "corrects": "7",
	}, h)
	if err := problems.Err(settling.SheetFields()); err != nil {
		t.Fatal(err)
	}
	if o.Grower != "G1" || o.Day != s.Today() || !o.Price.Equal(quantity.Of("4.05", quantity.DollarsPerBu)) || o.Contract != "C-1" || !o.Sale || o.Corrects != 7 {
		t.Errorf("read %+v", o)
	}
	if len(o.Levies) != 1 || len(o.Advances) != 2 || !o.Advances[1].Amount.Equal(quantity.Int(500, quantity.Dollar)) || !slices.Equal(o.Payees, []string{"First Bank", "Second Bank"}) {
		t.Errorf("levies %v, advances %v, payees %v", o.Levies, o.Advances, o.Payees)
	}
	if o.PayAfter != quantity.MustDate("2027-01-04") {
		t.Errorf("paid after %s", o.PayAfter)
	}
}

// The posted price is taken where the text asks for it, and never else.
func TestPostedPrice(t *testing.T) {
	h, s := house(t)
	if _, problems := settling.ReadSheet(map[string]string{"grower": "G1", "price": "posted", "tariff": "corn-main-tariff-2026"}, h); !errors.Is(problems["price"], message.NotFound) {
		t.Errorf("with none posted: %v", problems["price"])
	}
	bid := quantity.Of("4.12", quantity.DollarsPerBu)
	must(t, scalehouse.PostPrice(t.Context(), s.Desk, elevator.PostedPrice{Commodity: "corn", Day: s.Today(), Price: bid}))
	h.House = office.NewEntering(t.Context(), s.Desk)
	o, problems := settling.ReadSheet(map[string]string{"grower": "G1", "price": "posted", "tariff": "corn-main-tariff-2026"}, h)
	if len(problems) > 0 || !o.Price.Equal(bid) {
		t.Errorf("price %v, %v", o.Price, problems)
	}
	if o, _ := settling.ReadSheet(map[string]string{"grower": "G1", "tariff": "corn-main-tariff-2026"}, h); o.Price != nil {
		t.Errorf("without a text the price is %s", *o.Price)
	}
}

// Each wrong text is told at its field, all at once.
func TestSheetProblems(t *testing.T) {
	h, _ := house(t)
	_, problems := settling.ReadSheet(map[string]string{
		"grower": "nobody", "price": "much", "levies": "us-soybeans", "advances": "2000", "pay-after": "soon", "corrects": "-1", "tariff": "corn-main-tariff-2026",
	}, h)
	for _, id := range []string{"grower", "price", "levies", "advances", "pay-after", "corrects"} {
		if problems[id] == nil {
			t.Errorf("nothing is wrong with %s", id)
		}
	}
	if len(problems) != 6 {
		t.Errorf("problems %v", problems)
	}
}

func TestPayment(t *testing.T) {
	today := quantity.MustDate("2026-10-14")
	on := settling.OpenOn{Sheet: 3, Left: quantity.Of("812.40", quantity.Dollar), Today: today}
	p, problems := settling.ReadPayment(map[string]string{"reference": "40117"}, on)
	if len(problems) > 0 || p.Sheet != 3 || !p.Amount.Equal(on.Left) || p.Day != today || p.How != "check" || p.Reference != "40117" {
		t.Errorf("read %+v, %v", p, problems)
	}
	p, problems = settling.ReadPayment(map[string]string{"amount": "100", "how": "cash", "day": "2026-10-15"}, on)
	if len(problems) > 0 || !p.Amount.Equal(quantity.Int(100, quantity.Dollar)) || p.How != "cash" || p.Day != today.AddDays(1) {
		t.Errorf("read %+v, %v", p, problems)
	}
	on.Left = quantity.Zero(quantity.Dollar)
	if _, problems := settling.ReadPayment(map[string]string{"reference": "1"}, on); !errors.Is(problems["amount"], message.Refused) {
		t.Errorf("with nothing open: %v", problems)
	}
	if _, problems := settling.ReadPayment(map[string]string{"amount": "-1", "day": "whenever"}, on); problems["amount"] == nil || problems["day"] == nil {
		t.Errorf("problems %v", problems)
	}
}
