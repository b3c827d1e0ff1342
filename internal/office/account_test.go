package office_test

import (
	"bytes"
	"math/big"
	"strings"
	"testing"
	"time"

	"github.com/xuri/excelize/v2"

	"tenthpoint/internal/book"
	"tenthpoint/internal/daysheet"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/housetest"
	"tenthpoint/internal/title"
)

// shared is a scene in which Ada Field farms on thirds for Len Lord: her loads
// are parted, his own are not.
func shared(t testing.TB) *scene {
	s := housetest.New(t)
	s.As(housetest.Manager)
	for _, g := range []elevator.Grower{{ID: "G1", Name: "Ada Field", Address: "2 Farm Lane"}, {ID: "G2", Name: "Len Lord"}} {
		must(t, scalehouse.SetGrower(ctx, s.Desk, g))
	}
	must(t, scalehouse.SetContract(ctx, s.Desk, elevator.ContractTerms{Number: "C-7", Grower: "G1", Commodity: "corn", Quantity: quantity.Of("700", quantity.Bushel), Price: quantity.Of("4.15", quantity.DollarsPerBu), Until: quantity.MustDate("2026-12-31")}))
	price := quantity.Of("4.15", quantity.DollarsPerBu)
	for i, one := range []struct {
		shared   bool
		how      title.Under
		contract string
		price    *quantity.Amount
		moisture string
	}{
		{true, title.CashSale, "", &price, "18.3"}, {true, title.Contract, "C-7", &price, "17.1"}, {false, title.Contract, "C-7", &price, "14.8"},
		{true, title.OpenStorage, "", nil, "21.7"}, {false, title.OpenStorage, "", nil, "16.4"}, {true, title.CashSale, "", &price, "19.9"},
	} {
		d := housetest.Details()
		d.Under, d.Terms.No, d.Price = one.how, one.contract, one.price
		if one.shared {
			d.Shares = []load.Owner{
				{Party: load.Party{ID: "G1", Name: "Ada Field"}, Parts: quantity.Int(2, quantity.Plain), Of: quantity.Int(3, quantity.Plain)},
				{Party: load.Party{ID: "G2", Name: "Len Lord"}, Parts: quantity.Int(1, quantity.Plain), Of: quantity.Int(3, quantity.Plain)},
			}
		}
		id, err := scalehouse.OpenLoad(ctx, s.Desk, d)
		must(t, err)
		s.Weigh(id, load.Gross, 52300+int64(i)*140)
		s.Sample(id, one.moisture, housetest.Found("bcfm", "3.4", quantity.Percent))
		s.Weigh(id, load.Tare, 24000)
		_, err = scalehouse.Issue(ctx, s.Desk, id)
		must(t, err)
		s.Time = s.Time.Add(20 * time.Minute)
	}
	must(t, scalehouse.Void(ctx, s.Desk, 6, "weighed twice"))
	return s
}

var ever = quantity.Date{}

func account(s *scene, grower string, from, to quantity.Date) daysheet.Account {
	s.T.Helper()
	a, err := office.Account(ctx, s.Desk, grower, from, to)
	must(s.T, err)
	return a
}

func statement(s *scene, grower string) report.Document {
	s.T.Helper()
	d, err := office.Statement(ctx, s.Desk, grower, ever, ever)
	must(s.T, err)
	return d
}

func TestStatementPapers(t *testing.T) {
	s := shared(t)
	housetest.Golden(t, "statement.txt", statement(s, "G1").Text(100))
	housetest.Golden(t, "statement.pdf.txt", housetest.PDFText(t, statement(s, "G1"), housetest.Wide))
	housetest.Golden(t, "statement-landlord.txt", statement(s, "G2").Text(100))
}

// What the owners have adds up to what was settled, in pounds, bushels and
// cents; nothing is counted twice and nothing is lost.
func TestOwnersAddUpToTheWhole(t *testing.T) {
	s := shared(t)
	rows, err := s.Store.Loads(ctx, book.LoadFilter{Phases: []string{string(load.Ticketed)}})
	must(t, err)
	whole := map[string]quantity.Amount{}
	for _, r := range rows {
		for _, id := range []string{"net", "settled", "quantity", "drying", "adjustments", "value", "payable"} {
			if a, ok := r.Figures[id]; ok {
				if sum, begun := whole[id]; begun {
					a = sum.Add(a)
				}
				whole[id] = a
			}
		}
	}
	tenant, landlord := account(s, "G1", ever, ever).Parts[0].Sum, account(s, "G2", ever, ever).Parts[0].Sum
	for id, pair := range map[string][2]quantity.Amount{
		"net": {tenant.Net, landlord.Net}, "settled": {tenant.Settled, landlord.Settled}, "quantity": {tenant.Quantity, landlord.Quantity},
		"drying": {tenant.Drying, landlord.Drying}, "adjustments": {tenant.Charges.Neg(), landlord.Charges.Neg()}, "value": {tenant.Value, landlord.Value}, "payable": {tenant.Payable, landlord.Payable},
	} {
		if sum := pair[0].Add(pair[1]); !sum.Equal(whole[id]) {
			t.Errorf("%s: %s and %s make %s, the tickets come to %s", id, pair[0], pair[1], sum, whole[id])
		}
	}
}

// A landlord sees his own part and no figure of the whole load or the tenant.
func TestLandlordSeesOnlyHisShare(t *testing.T) {
	s := shared(t)
	text := statement(s, "G2").Text(200)
	rows, err := s.Store.Loads(ctx, book.LoadFilter{FromTicket: 1})
	must(t, err)
	for _, r := range rows {
		for id, a := range r.Figures {
			own := strings.HasPrefix(id, "share.2.") || id == "moisture" || strings.HasPrefix(id, "factor.") || id == "price"
			if figure := a.Figure(); !own && len(figure) > 5 && strings.Contains(text, figure) {
				t.Errorf("the landlord's statement shows %s of ticket %d: %s", id, r.Ticket, figure)
			}
		}
	}
	if a := account(s, "G2", ever, ever); a.Parts[0].Sum.Loads != 3 || len(a.Contracts) != 0 {
		t.Errorf("%d loads, %d contracts", a.Parts[0].Sum.Loads, len(a.Contracts))
	}
}

func TestContractFill(t *testing.T) {
	s := shared(t)
	// Two thirds of ticket 2 and all of ticket 3.
	f := account(s, "G1", quantity.MustDate("2027-01-01"), ever).Contracts[0]
	if f.Loads() != 2 || f.Delivered.String() != "700 bu" || f.Left.Sign() != 0 || f.Over().String() != "138.88 bu" {
		t.Errorf("%d loads, %s delivered, %s left, %s over", f.Loads(), f.Delivered, f.Left, f.Over())
	}
	must(t, scalehouse.Void(ctx, s.Desk, 3, "wrong contract"))
	if f = account(s, "G1", ever, ever).Contracts[0]; f.Loads() != 1 || f.Left.String() != "371.48 bu" {
		t.Errorf("after a void: %d loads, %s left", f.Loads(), f.Left)
	}
}

// A card that takes another one's place delivers on its contracts; the account, the list and the guard
// say the same.
func TestAContractIsFilledThroughTheCardThatTookOver(t *testing.T) {
	s := shared(t)
	must(t, scalehouse.Void(ctx, s.Desk, 3, "wrong contract"))
	must(t, scalehouse.SetGrower(ctx, s.Desk, elevator.Grower{ID: "G3", Name: "Field Farms"}))
	must(t, scalehouse.TakeOver(ctx, s.Desk, "G1", elevator.Takeover{Grower: "G3", Kind: elevator.Merged, Reason: "one grower"}))
	d := housetest.Details()
	price := quantity.Of("4.15", quantity.DollarsPerBu)
	d.Grower = load.Party{ID: "G3", Name: "Field Farms"}
	d.Under, d.Terms.No, d.Price = title.Contract, "C-7", &price
	id, err := scalehouse.OpenLoad(ctx, s.Desk, d)
	must(t, err)
	s.Weigh(id, load.Gross, 52300)
	s.Sample(id, "14.8", housetest.Found("bcfm", "3.4", quantity.Percent))
	s.Weigh(id, load.Tare, 24000)
	_, err = scalehouse.Issue(ctx, s.Desk, id)
	must(t, err)

	c, err := office.ContractNumbered(ctx, s.Desk, "C-7")
	must(t, err)
	f, err := office.ContractFill(ctx, s.Desk, c)
	must(t, err)
	own := account(s, "G1", ever, ever).Contracts
	if len(own) != 1 || !own[0].Delivered.Equal(f.Delivered) || f.Loads() != 2 || f.Delivered.String() != "700 bu" {
		t.Errorf("%d loads, %s delivered; on the account %+v", f.Loads(), f.Delivered, own)
	}
	if f.Grower != "G1" {
		t.Errorf("the contract was written with G1, not %s", f.Grower)
	}
}

func TestAccountOfASeason(t *testing.T) {
	s := shared(t)
	s.At("2026-10-09 11:00")
	s.Ticket()
	s.Leave("Pit 1", 2000)
	for _, c := range []struct {
		from, to string
		loads    int
		out      int
	}{{"", "", 6, 1}, {"", "2026-10-08", 5, 0}, {"2026-10-02", "", 1, 1}, {"2026-10-02", "2026-10-08", 0, 0}, {"2026-10-01", "2026-10-01", 5, 0}} {
		var from, to quantity.Date
		must(t, from.UnmarshalText([]byte(c.from)))
		must(t, to.UnmarshalText([]byte(c.to)))
		a := account(s, "G1", from, to)
		n := 0
		for _, p := range a.Parts {
			n += p.Sum.Loads
		}
		if n != c.loads || len(a.Out) != c.out {
			t.Errorf("from %q to %q: %d loads and %d out, want %d and %d", c.from, c.to, n, len(a.Out), c.loads, c.out)
		}
	}
	_, err := office.Account(ctx, s.Desk, "G9", ever, ever)
	refused(t, err, errortest.NotFound("G9"))
}

// A workbook opened again and added up by other means comes to its own totals.
func TestWorkbookAddsUp(t *testing.T) {
	s := shared(t)
	totals := 0
	for _, d := range []report.Document{statement(s, "G1"), statement(s, "G2"), s.DayPaper(housetest.Oct1)} {
		var out bytes.Buffer
		must(t, d.XLSX(&out))
		book, err := excelize.OpenReader(&out)
		must(t, err)
		for i, name := range book.GetSheetList()[1:] {
			rows, err := book.GetRows(name, excelize.Options{RawCellValue: true})
			must(t, err)
			totals += addUp(t, name, d.Tables()[i], rows[1:])
		}
		must(t, book.Close())
	}
	if totals < 40 {
		t.Errorf("only %d totals were added up", totals)
	}
}

// addUp compares each total of a sheet with the lines over it.
func addUp(t *testing.T, sheet string, table report.Table, rows [][]string) (totals int) {
	t.Helper()
	begin := 0
	for i, r := range table.Rows {
		if r.Kind != report.Total {
			continue
		}
		for c, column := range table.Columns {
			if column.Align != report.Right || strings.HasPrefix(column.String(), "Ticket") || strings.HasPrefix(column.String(), "Average") || strings.HasPrefix(column.String(), "Moist") || strings.HasPrefix(column.String(), "Test wt.") || c >= len(rows[i]) || rows[i][c] == "" {
				continue
			}
			want, ok := new(big.Rat).SetString(rows[i][c])
			if !ok {
				t.Errorf("%s: the total of %s is no number: %q", sheet, column.Title, rows[i][c])
				continue
			}
			sum := new(big.Rat)
			for k := begin; k < i; k++ {
				if c < len(rows[k]) && table.Rows[k].Kind == report.Plain {
					if one, ok := new(big.Rat).SetString(rows[k][c]); ok {
						sum.Add(sum, one)
					}
				}
			}
			if sum.Cmp(want) != 0 {
				t.Errorf("%s, %s: the cells add to %s, the total is %s", sheet, column.Title, sum.FloatString(3), rows[i][c])
			}
			totals++
		}
		begin = i + 1
	}
	return totals
}
