package terminal

import (
	"fmt"
	"strings"
	"text/tabwriter"

	"tenthpoint/internal/message"
)

// ListFlags are those of every list.
type ListFlags struct {
	JSON bool `help:"Print for programs: every cell as text."`
}

// Table prints rows under tab-separated headings, or as objects named by them; empty is printed
// when there are no rows. Strings among the cells are names or figures; translated text must be a
// message.
func (p *Session) Table(f ListFlags, head string, rows [][]any, empty string) error {
	if f.JSON {
		return p.PrintJSON(objects(strings.Split(head, "\t"), rows))
	}
	return p.Columns(head, rows, empty)
}

// Columns prints rows under tab-separated headings; empty is printed when there are no rows. On a
// screen long cells are folded, so that no line is wider than a paper.
func (p *Session) Columns(head string, rows [][]any, empty string) error {
	if len(rows) == 0 {
		p.Say("%s", message.Words(empty))
		return nil
	}
	lines := [][]string{strings.Split(head, "\t")}
	for i, title := range lines[0] {
		lines[0][i] = p.Printer.Word(title)
	}
	for _, row := range rows {
		cells := make([]string, len(row))
		for i, cell := range p.Printer.AsShown(row) {
			cells[i] = p.Printer.Say("%v", cell)
		}
		lines = append(lines, cells)
	}
	if p.Screen {
		lines = folded(lines, usualWidth)
	}
	w := tabwriter.NewWriter(p.Stdout, 0, 0, columnGap, ' ', 0)
	for _, cells := range lines {
		fmt.Fprintln(w, strings.Join(cells, "\t"))
	}
	return w.Flush()
}

// columnGap is the number of letters between two columns.
const columnGap = 2

// Or is a name or figure, or where there is none a text in its place.
func Or(own string, otherwise message.Text) any {
	if own == "" {
		return otherwise
	}
	return own
}

// objects are rows with each cell in English under its heading: "Stored tare" is
// "stored_tare".
func objects(heads []string, rows [][]any) []map[string]string {
	out := make([]map[string]string, len(rows))
	for i, row := range rows {
		out[i] = map[string]string{}
		for j, cell := range row {
			out[i][strings.ReplaceAll(strings.ToLower(heads[j]), " ", "_")] = message.New("%v", cell).String()
		}
	}
	return out
}
