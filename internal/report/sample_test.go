package report

import (
	"flag"
	"fmt"
	"strings"
	"tenthpoint/internal/message"
	"time"
)

// sample is a document with every kind of block, and a table longer than a
// page.
func sample() Document {
	return Document{
		House: []string{"Four Corners Grain (invented)", "1 Elevator Road, Sample Town", "555 0100"},
		Title: message.New("Day sheet"), About: message.New("Saturday %s", "2026-10-03"), Marks: []message.Text{message.New("EXAMPLE - NOT FOR TRADE")},
		Made:   time.Date(2026, 10, 3, 22, 0, 0, 0, time.UTC),
		Footer: message.New("Every total is the sum of the lines printed above it. Local law, the weights-and-measures authority, the licensed weighmaster and the official inspector outrank this paper."),
		Blocks: []Block{
			Pairs{[]Pair{{Label: message.New("Closed by"), Value: message.Name("A. Sample")}, {Label: message.New("Closed at"), Value: message.Name("2026-10-03 19:40")}, {Label: message.New("Tickets"), Value: message.Name("1 to 58, no number missing")}}},
			Heading{message.New("Corn")},
			Table{Name: message.New("corn"), Columns: []Column{{Title: message.New("Where")}, {Title: message.New("Loads"), Align: Right}, {Title: message.New("Net"), Unit: "lb", Align: Right}, {Title: message.New("Bushels"), Align: Right}},
				Rows: []Row{{Cells: names("Pit 1", "2", "104,600", "1,624.88")}, {Cells: names("All", "2", "104,600", "1,624.88"), Kind: Total}}},
			Bars{Title: message.New("Loads by hour"), Labels: names("07", "08", "09"), Heights: []int{500, 1000, 250}, Values: names("2", "4", "1")},
			Bars{Title: message.New("Moisture of the day's loads"), Labels: names("15", "16", "17"), Heights: []int{0, 1000, 333}, Values: names("0", "3", "1")},
			Para{Text: message.Name(strings.Repeat("A sentence that goes on. ", 12))},
			Para{Text: message.New("Nothing was overridden."), Strong: true},
			Table{Name: message.New("none"), Columns: []Column{{Title: message.New("What")}}, Empty: message.New("No ticket was voided.")},
			Steps{[]Step{
				{Label: "Shrink", Part: true},
				{Label: "Water shrink", Figure: "5,846 lb", Explain: []string{"Net × (Moisture − Shrink-to) ÷ (100 % − Shrink-to)", "52,300 lb × (25.0 % − 15.0 %) ÷ (100 % − 15.0 %) = 6,152.941176… lb → 6,153 lb (to 1 lb, half-up)"}},
				{Label: "Test weight discount", Figure: "none", Skipped: true, Explain: []string{"54.0 lb/bu is not below 54.0 lb/bu"}},
			}},
			Signing{names("Manager", "Date")},
			NewPage{},
			Heading{message.New("Tickets")},
			longTable(120),
		},
	}
}

func longTable(rows int) Table {
	t := Table{Name: message.New("tickets"), Columns: []Column{{Title: message.New("No."), Align: Right}, {Title: message.New("Time")}, {Title: message.New("Grower")}, {Title: message.New("Bin")}, {Title: message.New("Net"), Unit: "lb", Align: Right}, {Title: message.New("Moisture"), Unit: "%", Align: Right},
		{Title: message.New("Test weight"), Align: Right}, {Title: message.New("Water shrink"), Unit: "lb", Align: Right}, {Title: message.New("Handling"), Unit: "lb", Align: Right}, {Title: message.New("Settled"), Unit: "lb", Align: Right}, {Title: message.New("Bushels"), Align: Right}, {Title: message.New("Drying"), Unit: "$", Align: Right}, {Title: message.New("Payable"), Unit: "$", Align: Right}, {Title: message.New("Disposition")}}}
	for i := range rows {
		r := Row{Cells: names(fmt.Sprint(1041+i), "14:05", "Sample grower with a long name", "Pit 1", "52,300", "18.4", "55.0", "2,092", "262", "49,946", "891.89", "119.33", "price later", "stored")}
		if i%17 == 5 {
			r.Kind = Struck
		}
		t.Rows = append(t.Rows, r)
	}
	t.Rows = append(t.Rows, Row{Kind: Total, Cells: names("", "", "All", "", "6,276,000", "18.4", "", "251,040", "", "", "", "", "0.00", "")})
	return t
}

func names(all ...string) []message.Text {
	out := make([]message.Text, len(all))
	for i, name := range all {
		out[i] = message.Name(name)
	}
	return out
}

var update = flag.Bool("update", false, "write the golden papers anew")
