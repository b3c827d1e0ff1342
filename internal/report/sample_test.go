package report

import (
	"flag"
	"fmt"
	"strings"
	"time"
)

// sample is a document with every kind of block, and a table longer than a
// page.
func sample() Document {
	return Document{
		House: []string{"Four Corners Grain (invented)", "1 Elevator Road, Sample Town", "555 0100"},
		Title: "Day sheet", About: "Saturday 2026-10-03", Marks: []string{"EXAMPLE - NOT FOR TRADE"},
		Made:   time.Date(2026, 10, 3, 22, 0, 0, 0, time.UTC),
		Footer: "Every total is the sum of the lines printed above it. Local law, the weights-and-measures authority, the licensed weighmaster and the official inspector outrank this paper.",
		Blocks: []Block{
			Pairs{[]Pair{{Label: "Closed by", Value: "A. Sample"}, {Label: "Closed at", Value: "2026-10-03 19:40"}, {Label: "Tickets", Value: "1 to 58, no number missing"}}},
			Heading{"Corn"},
			Table{Name: "corn", Columns: []Column{{Title: "Where"}, {Title: "Loads", Align: Right}, {Title: "Net lb", Align: Right}, {Title: "Bushels", Align: Right}},
				Rows: []Row{{Cells: []string{"Pit 1", "2", "104,600", "1,624.88"}}, {Cells: []string{"All", "2", "104,600", "1,624.88"}, Kind: Total}}},
			Bars{Title: "Loads by hour", Labels: []string{"07", "08", "09"}, Heights: []int{500, 1000, 250}, Values: []string{"2", "4", "1"}},
			Bars{Title: "Moisture of the day's loads", Labels: []string{"15", "16", "17"}, Heights: []int{0, 1000, 333}, Values: []string{"0", "3", "1"}},
			Para{Text: strings.Repeat("A sentence that goes on. ", 12)},
			Para{Text: "Nothing was overridden.", Strong: true},
			Table{Name: "none", Columns: []Column{{Title: "What"}}, Empty: "No ticket was voided."},
			Steps{[]Step{
				{Label: "Shrink", Part: true},
				{Label: "Water shrink", Figure: "5,846 lb", Explain: []string{"Net × (Moisture − Shrink-to) ÷ (100 % − Shrink-to)", "52,300 lb × (25.0 % − 15.0 %) ÷ (100 % − 15.0 %) = 6,152.941176… lb → 6,153 lb (to 1 lb, half-up)"}},
				{Label: "Test weight discount", Figure: "none", Skipped: true, Explain: []string{"54.0 lb/bu is not below 54.0 lb/bu"}},
			}},
			Signing{[]string{"Manager", "Date"}},
			NewPage{},
			Heading{"Tickets"},
			longTable(120),
		},
	}
}

func longTable(rows int) Table {
	t := Table{Name: "tickets", Columns: []Column{{Title: "No.", Align: Right}, {Title: "Time"}, {Title: "Grower"}, {Title: "Bin"}, {Title: "Net lb", Align: Right}, {Title: "Moisture %", Align: Right},
		{Title: "Test weight", Align: Right}, {Title: "Water shrink lb", Align: Right}, {Title: "Handling lb", Align: Right}, {Title: "Settled lb", Align: Right}, {Title: "Bushels", Align: Right}, {Title: "Drying $", Align: Right}, {Title: "Payable $", Align: Right}, {Title: "Disposition"}}}
	for i := range rows {
		r := Row{Cells: []string{fmt.Sprint(1041 + i), "14:05", "Sample grower with a long name", "Pit 1", "52,300", "18.4", "55.0", "2,092", "262", "49,946", "891.89", "119.33", "price later", "stored"}}
		if i%17 == 5 {
			r.Kind = Struck
		}
		t.Rows = append(t.Rows, r)
	}
	t.Rows = append(t.Rows, Row{Kind: Total, Cells: []string{"", "", "All", "", "6,276,000", "18.4", "", "251,040", "", "", "", "", "0.00", ""}})
	return t
}

var update = flag.Bool("update", false, "write the golden papers anew")
