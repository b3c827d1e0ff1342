package ledger_test

import (
	"os"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tenthpoint/internal/ledger"
	"tenthpoint/internal/message"
	"tenthpoint/internal/paysheet"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/tomlfile"
)

func example(t *testing.T) ledger.Accounts {
	t.Helper()
	text, err := os.ReadFile("../../schedules/accounts/example.toml")
	if err != nil {
		t.Fatal(err)
	}
	accounts, err := ledger.ReadAccounts("example.toml", text)
	if err != nil {
		t.Fatal(err)
	}
	return accounts
}

func dollars(text string) quantity.Amount { return quantity.Of(text, quantity.Dollar) }

// sheetOf is a sheet of soybeans whose figures hold together.
func sheetOf(net, services, keeping, levies, advances, interest quantity.Amount) paysheet.Sheet {
	deducted := services.Add(keeping).Add(levies).Add(advances).Add(interest)
	return paysheet.Sheet{
		Number: 7, Day: quantity.MustDate("2026-10-20"), Grower: "104", Name: "Linden; Flats", Commodity: "soybeans",
		Figures: map[string]quantity.Amount{
			"net": net, "services": services, "keeping": keeping, "levies": levies, "advances": advances, "interest": interest,
			"deducted": deducted, "payable": net.Sub(deducted),
		},
	}
}

func TestJournal(t *testing.T) {
	accounts := example(t)
	s := sheetOf(dollars("10000"), dollars("120.50"), dollars("33.10"), dollars("50"), dollars("2000"), dollars("17.26"))
	s.Voided = &paysheet.Voided{Day: quantity.MustDate("2026-11-02"), By: "Mae Orton", Reason: "price"}
	posted, err := accounts.Sheet(s, []ledger.Taken{{ID: "us-soybeans", Amount: dollars("50")}, {ID: "fund", Amount: dollars("20"), Borne: true}})
	if err != nil {
		t.Fatal(err)
	}
	paid, err := accounts.Payment(paysheet.Payment{Number: 3, Sheet: 7, Day: quantity.MustDate("2026-10-21"), Amount: dollars("7779.14"), How: paysheet.Check}, s)
	if err != nil {
		t.Fatal(err)
	}
	text := ledger.Journal(ledger.Between(append(posted, paid...), quantity.Date{}, quantity.Date{}), func(said message.Sayable) string { return said.(message.Text).String() })
	const want = `2026-10-20 (sheet-7) 104 Linden, Flats | Settlement sheet 7
    expenses:grain:soybeans  $10000.00
    income:services  $-120.50
    income:storage  $-33.10
    liabilities:levies:soybeans  $-50.00
    liabilities:levies  $-20.00
    expenses:levies  $20.00
    assets:advances  $-2000.00
    income:interest  $-17.26
    liabilities:growers  $-7779.14

2026-10-21 (payment-3) 104 Linden, Flats | Payment 3
    liabilities:growers  $7779.14
    assets:bank:checks  $-7779.14

2026-11-02 (sheet-7) 104 Linden, Flats | Settlement sheet 7 is void
    expenses:grain:soybeans  $-10000.00
    income:services  $120.50
    income:storage  $33.10
    liabilities:levies:soybeans  $50.00
    liabilities:levies  $20.00
    expenses:levies  $-20.00
    assets:advances  $2000.00
    income:interest  $17.26
    liabilities:growers  $7779.14

`
	if text != want {
		t.Errorf("journal:\n%s", text)
	}
	for _, p := range ledger.Totals(append(posted, paid...)) {
		if due := map[string]string{"liabilities:growers": "7779.14", "assets:bank:checks": "-7779.14"}[p.Account]; p.Amount.Sign() != 0 && !p.Amount.Equal(dollars(due)) {
			t.Errorf("%s comes to %s", p.Account, p.Amount)
		}
	}
}

// Every transaction sums to zero, whatever a sheet comes to; figures that do not hold together are
// refused.
func TestTransactionsBalance(t *testing.T) {
	accounts := example(t)
	rapid.Check(t, func(r *rapid.T) {
		cents := func(name string) quantity.Amount {
			return quantity.Int(rapid.Int64Range(-50_000_00, 50_000_00).Draw(r, name), quantity.Dollar).Div(quantity.Int(100, quantity.Plain))
		}
		levied := cents("levy")
		s := sheetOf(cents("net"), cents("services"), cents("keeping"), levied, cents("advances"), cents("interest"))
		posted, err := accounts.Sheet(s, []ledger.Taken{{ID: "x", Amount: levied}, {ID: "y", Amount: cents("borne"), Borne: true}})
		if err != nil {
			r.Fatal(err)
		}
		sum := quantity.Zero(quantity.Dollar)
		for _, p := range posted[0].Postings {
			sum = sum.Add(p.Amount)
		}
		if sum.Sign() != 0 {
			r.Fatalf("%s is left of %+v", sum, posted[0].Postings)
		}
		s.Figures["payable"] = s.Figures["payable"].Add(dollars("0.01"))
		if _, err := accounts.Sheet(s, []ledger.Taken{{ID: "x", Amount: levied}}); message.KindOf(err) != message.Storage {
			r.Fatalf("a cent too much: %v", err)
		}
	})
}

func TestMistakesInAccounts(t *testing.T) {
	text, err := os.ReadFile("../../schedules/accounts/example.toml")
	if err != nil {
		t.Fatal(err)
	}
	for change, problems := range map[[2]string]int{
		{`growers = "liabilities:growers"`, ``}:           1,
		{`cash = "assets:cash"`, `cash = "assets;cash"`}:  1,
		{`cash = "assets:cash"`, `cash = "assets  cash"`}: 1,
		{`commodity = "soybeans"`, `commodity = "rocks"`}: 1,
		{`[accounts]`, "[accounts]\ntax = \"9000\""}:      1,
		{`id = "us-soybeans"`, `name = "us-soybeans"`}:    2,
	} {
		_, err := ledger.ReadAccounts("x.toml", []byte(strings.Replace(string(text), change[0], change[1], 1)))
		if found, _ := err.(tomlfile.Problems); len(found) != problems {
			t.Errorf("%q: %d problems, want %d: %v", change[1], len(found), problems, err)
		}
	}
}
