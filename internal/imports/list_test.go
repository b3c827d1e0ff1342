package imports

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"tenthpoint/internal/elevator"

	"tenthpoint/internal/entry"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/guard"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/settle"
	"tenthpoint/schedules"
)

// inPounds is an elevator that takes corn in pounds and knows the growers of the lists.
var inPounds = Defaults{House: testHouse{}, Name: "list.csv"}

type testHouse struct{}

func (testHouse) Growers() ([]elevator.Grower, error) {
	return []elevator.Grower{{ID: "G1", Name: "Ada Field"}, {ID: "G2", Name: "Len Lord"}, {ID: "G", Name: "Gus Ode"}, {ID: "A", Name: "Al Part"}, {ID: "B", Name: "Bo Part"}}, nil
}
func (testHouse) Trucks() ([]elevator.Truck, error)            { return nil, nil }
func (testHouse) Bins() ([]elevator.Bin, error)                { return nil, nil }
func (testHouse) Contracts() ([]elevator.ContractTerms, error) { return nil, nil }
func (testHouse) Profile() elevator.Profile {
	return elevator.Profile{
		Scales: []elevator.Scale{{ID: "1", Division: quantity.Int(20, quantity.Lb), Capacity: quantity.Int(120_000, quantity.Lb)}},
		Grains: []elevator.GrainRule{{Commodity: "corn", Schedule: "main"}},
	}
}
func (testHouse) Rates() *rates.Set {
	set, err := schedules.Editions()
	if err != nil {
		panic(err)
	}
	return set
}
func (testHouse) Today() quantity.Date { return quantity.MustDate("2026-10-01") }
func (testHouse) Stamp() load.Stamp    { return load.Stamp{Who: "Mae Orton"} }
func (testHouse) RetainDays() int      { return 30 }
func (e testHouse) Settle(l *load.Load) (*settle.Settlement, settle.Problems) {
	edition, err := entry.EditionOf(e.Profile(), e.Rates(), l.Details)
	if err != nil {
		return nil, settle.Problems{{Field: "edition", Sentence: message.Of(err)}}
	}
	return nil, settle.Check(l.SettleFacts(), edition)
}
func (e testHouse) Around(*load.Load) (guard.Setting, error) {
	return guard.Setting{House: e.Profile()}, nil
}
func (testHouse) Posted(string, quantity.Date) (*load.Posted, error) { return nil, nil }
func (testHouse) MoistureClasses(*load.Load) []grain.MoistureClass   { return nil }

// Every example reads without a problem and gives what it says.
func TestExamplesRead(t *testing.T) {
	for _, kind := range []Kind{Growers, Trucks, Loads} {
		list, problems := Read(kind, []byte(Example(kind)), inPounds)
		if len(problems) > 0 || len(list.Problems()) > 0 || list.Good() == 0 {
			t.Errorf("%s: %v %v, %d good rows", kind, problems, list.Problems(), list.Good())
		}
	}
	trucks, _ := Read(Trucks, []byte(Example(Trucks)), inPounds)
	if tare := trucks.Rows[0].Truck.Tare; tare == nil || tare.String() != "24,300 lb" || trucks.Rows[1].Truck.Tare != nil {
		t.Errorf("trucks: %+v", trucks.Rows)
	}
	loads, _ := Read(Loads, []byte(Example(Loads)), inPounds)
	p := loads.Rows[0].Past
	details, sample := p.Facts.Details, p.Facts.Sample
	got := fmt.Sprint(details.Day, details.Commodity, details.Grower.ID, p.Facts.Weighed[0].Weight, p.Facts.Weighed[1].Weight, sample.Moisture.Percent, sample.Findings[0].Factor, sample.Findings[0].Amount, p.OldTicket())
	if want := "2026-09-14cornG152,300 lb24,300 lb18.4 %test-weight55 lb/buA-1042"; strings.ReplaceAll(got, " ", "") != strings.ReplaceAll(want, " ", "") {
		t.Errorf("past load %q, want %q", got, want)
	}
}

func TestWhatIsWrongIsSaidByLineAndColumn(t *testing.T) {
	const loads = "day,commodity,grower,truck,gross,tare,moisture,price,shares,disposition,factor.musty,factor.garlic\n"
	for _, c := range []struct {
		kind Kind
		text string
		want []string
	}{
		{Growers, "", []string{"line 1: the file has no heading row; name the columns in it: code, name, address, phone, shares"}},
		{Growers, "code,nam\nG1,A\n", []string{`line 1: the column "nam" is not known in a list of growers; known are code, name, address, phone, shares. Rename it or take it out`, `line 1: the column "name" is missing; every row needs it`}},
		{Growers, "code,name,code\n", []string{`line 1: the column "code" is there twice; keep one`}},
		{Growers, "code,name\n,\n", []string{"line 2, code: empty; write the short code clerks type", "line 2, name: empty; write the name as it is to stand on tickets"}},
		{Growers, "code,name\nG1,A,B\n", []string{"line 2: there are 3 cells for 2 columns; a comma inside a cell needs quotation marks round the cell"}},
		{Growers, "code,name\nG1,\"A\nG2,B\n", []string{"line 2: the quotation marks do not match; write \"\" for one inside a cell"}},
		{Growers, "code,name\nG1,A\nG1,B\n", []string{`line 3, code: "G1" stands on line 2 already; keep one of the two`}},
		{Growers, "code,name,shares\nG1,A,G1=2/3; G2=1/4\n", []string{"line 2, shares: the shares add to 91.666666… %, not to 100 %; mend them"}},
		{Growers, "code,name,shares\nG1,A,half\n", []string{`line 2, shares: "half" is no share; write owner and part, like G2=1/3 or G2=33.5%, with a semicolon between owners`}},
		{Growers, "code,name,shares\nG1,A,G1=1/0\n", []string{"line 2, shares: The share of G1 0 is outside 0.0001 to 1,000,000; check the figure and type it again"}},
		{Trucks, "number,tare,tare_day\nT1,24300,\nT2,,2026-08-01\nT3,x,2026-08-01\nT4,5,1.8.2026\n", []string{
			"line 2, tare_day: empty; write the day the tare was weighed",
			"line 3, tare: empty, but a day is given; write the tare or take the day out",
			`line 4, tare: tare "x" is not a number; type digits, like 52300 or 15.3`,
			`line 5, tare_day: "1.8.2026" is not a date; write year-month-day, like 2025-10-31`}},
		{Loads, loads + "2026-02-30,rice,,T1,24300,52300,0.1,$4,,given,,\n", []string{
			"line 2, grower: empty; write the grower's code",
			"line 2, day: there is no day 30 in 2026-02, which ends on the 28",
			`line 2, disposition: "given" is not one of sold, stored, contract, receipt, delayed, bank, undecided; choose one or leave it empty`,
			"line 2, tare: net would be -28,000 lb (gross 24,300 - tare 52,300); were the two swapped?",
			`line 2, commodity: "rice" is not a commodity here`}},
		{Loads, loads + "2026-09-14,corn,G1,T1,\"52,300 lb\",24000 kg,,-4,,,perhaps,3\n", []string{
			"line 2, tare: gross is 52,300 lb and tare is 24,000 kg; write both in one unit",
			"line 2, moisture: empty; write the moisture in percent",
			`line 2, factor.musty: `, "line 2, factor.garlic: Corn is not tested for this; leave the cell empty",
			"line 2, price: Price -$4.00/bu is outside"}},
		{Loads, "day,commodity,grower,truck,gross,tare,moisture,factor.nonsense\n", []string{`line 1: the column "factor.nonsense" is not known`}},
	} {
		list, problems := Read(c.kind, []byte(c.text), inPounds)
		var got []string
		for _, p := range append(problems, list.Problems()...) {
			got = append(got, p.String())
		}
		if len(got) != len(c.want) {
			t.Errorf("%q gives %d problems, want %d:\n%s", c.text, len(got), len(c.want), strings.Join(got, "\n"))
			continue
		}
		for i, want := range c.want {
			if !strings.HasPrefix(got[i], want) {
				t.Errorf("%q\n got %s\nwant %s", c.text, got[i], want)
			}
		}
	}
}

func TestOtherKindIsRefused(t *testing.T) {
	if _, problems := Read("cats", []byte("a\n"), inPounds); len(problems) != 1 {
		t.Errorf("problems: %v", problems)
	}
}

func TestByteOrderMarkIsNoPartOfTheFirstColumn(t *testing.T) {
	if list, problems := Read(Growers, []byte("\ufeffCode, Name\nG1,A\n"), inPounds); len(problems) > 0 || list.Good() != 1 {
		t.Errorf("%v, %d good", problems, list.Good())
	}
}

// Whatever is in a file, reading it ends, and a row is either taken or says why
// not; its line is one of the file's.
func FuzzRead(f *testing.F) {
	for _, kind := range []Kind{Growers, Trucks, Loads} {
		f.Add(string(kind), Example(kind))
	}
	f.Add("growers", "code,name\n\"a\n")
	f.Add("loads", "day,commodity,grower,truck,gross,tare,moisture,price,shares\n2026-09-14,corn,G,T,9,1,15,4.15 $/cwt,A=1/2;B=50%\n")
	f.Fuzz(func(t *testing.T, kind, text string) {
		list, problems := Read(Kind(kind), []byte(text), inPounds)
		if len(problems) > 0 && len(list.Rows) > 0 {
			t.Errorf("a file with problems of its own was read: %v", problems)
		}
		for _, r := range list.Rows {
			isTaken := r.Grower != nil || r.Truck != nil || r.Past != nil
			if !isTaken && len(r.Problems) == 0 {
				t.Errorf("line %d is neither taken nor refused", r.Line)
			}
			if r.Line < 1 || r.Line > strings.Count(text, "\n")+strings.Count(text, "\r")+1 {
				t.Errorf("line %d of %q", r.Line, text)
			}
			if slices.ContainsFunc(r.Problems, func(p Problem) bool { return p.Reason.IsZero() || p.Line != r.Line }) {
				t.Errorf("problems %v", r.Problems)
			}
		}
	})
}

// What is improbable in a past load is remarked on with its line and column, and the
// row can be taken over.
func TestImprobablePastLoadsAreRemarkedOn(t *testing.T) {
	text := "day,grower,commodity,truck,gross,tare,moisture,price\n" +
		"2026-09-14,G1,corn,7,52300,24300,18.0,4.12\n" +
		"2026-09-14,G1,corn,7,52300,24300,36.0,412\n"
	list, problems := Read(Loads, []byte(text), inPounds)
	if len(problems) > 0 || len(list.Rows) != 2 || list.Rows[0].Past == nil {
		t.Fatalf("%v, %+v", problems, list.Rows)
	}
	if usual := list.Rows[0].Remarks; len(usual) > 0 {
		t.Errorf("a usual load: %v", usual)
	}
	columns := map[string]bool{}
	for _, r := range list.Rows[1].Remarks {
		columns[r.Column] = r.Line == 3
	}
	if !columns["moisture"] || !columns["price"] {
		t.Errorf("the absurd row has the remarks %v and the problems %v", list.Rows[1].Remarks, list.Rows[1].Problems)
	}
}

// A list longer than any is refused as a whole, and no row of it is read.
func TestListsHaveALimit(t *testing.T) {
	head := "code,name\n"
	for name, text := range map[string]string{
		"an open quote": head + `G1,"` + strings.Repeat("x", MostBytes),
		"many rows":     head + strings.Repeat("G1,A\n", MostRows+1),
	} {
		list, problems := Read(Growers, []byte(text), Defaults{})
		if len(list.Rows) > 0 || len(problems) != 1 {
			t.Errorf("%s: %d rows, problems %v", name, len(list.Rows), problems)
		}
	}
	most := head + strings.Repeat("G1,A\n", MostRows-1)
	if list, problems := Read(Growers, []byte(most), Defaults{}); len(list.Rows) != MostRows-1 || len(problems) > 0 {
		t.Errorf("%d rows, problems %v", len(list.Rows), problems)
	}
}
