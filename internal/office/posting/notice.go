package posting

import (
	"context"

	"tenthpoint/internal/keyring"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/rates/rule"
	"tenthpoint/internal/report"
	"tenthpoint/internal/tariff"
)

// Rates is an edition of rates as a paper to post where growers see it.
func Rates(ctx context.Context, d office.Desk, e *rates.Edition) (report.Document, error) {
	n := posted{
		title: message.New("Posted rates: %v", e.Title), about: message.New("%s, edition %v", e.Days(), e.ID), hash: e.Hash,
		from: e.From, example: e.Status == rates.Example, lines: e.Lines(), columns: [2]message.Text{message.New("Rule"), message.New("Figure")},
	}
	return n.paper(ctx, d)
}

// Tariff is a tariff as a paper to post where growers see it.
func Tariff(ctx context.Context, d office.Desk, e *tariff.Edition) (report.Document, error) {
	n := posted{
		title: message.New("Posted charges: %v", e.Title), about: message.New("%s, tariff %v", e.Days(), e.ID), hash: e.Hash,
		from: e.From, example: e.Status == tariff.Example, lines: e.Lines(), columns: [2]message.Text{message.New("What"), message.New("Charge")},
	}
	return n.paper(ctx, d)
}

// posted is a notice: its heads, and lines under their sections in a table of two columns.
type posted struct {
	title, about message.Text
	hash         string // SHA-256 of the file, in hex
	from         quantity.Date
	example      bool
	lines        []rule.Line
	columns      [2]message.Text
}

func (n posted) paper(ctx context.Context, d office.Desk) (report.Document, error) {
	paper := report.Of(d.Profile(), n.from)
	paper.Title, paper.About = n.title, n.about
	paper.Footer = message.New("No legal or tax advice: the authority and the contract outrank the program that made this paper.")
	if n.example {
		paper.Marks = []message.Text{message.New(rates.ExampleMark)}
	}
	keys, err := keyring.Read(ctx, d.Reader())
	if err != nil {
		return paper, err
	}
	proofs := []report.Pair{{Label: message.New("SHA-256 of the file"), Value: message.Words(n.hash)}}
	if key := keys.House(); !key.IsZero() {
		proofs = append(proofs, report.Pair{Label: message.New("Key of the house, as on signed slips"), Value: message.Words(key.Fingerprint())})
	}
	paper.Blocks = append(paper.Blocks, report.Pairs{Pairs: proofs})
	for _, group := range grouped(n.lines) {
		t := report.Table{Name: group[0].Section, Columns: []report.Column{{Title: n.columns[0]}, {Title: n.columns[1]}}}
		for _, l := range group {
			t.Rows = append(t.Rows, report.Row{Cells: []message.Text{l.Label, l.Value}})
		}
		paper.Blocks = append(paper.Blocks, report.Heading{Text: group[0].Section}, t)
	}
	return paper, nil
}

// grouped parts posted lines by their section.
func grouped(lines []rule.Line) [][]rule.Line {
	var out [][]rule.Line
	for _, l := range lines {
		if last := len(out) - 1; last >= 0 && out[last][0].Section.Equal(l.Section) {
			out[last] = append(out[last], l)
			continue
		}
		out = append(out, []rule.Line{l})
	}
	return out
}
