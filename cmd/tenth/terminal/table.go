package terminal

import (
	"fmt"
	"strings"
	"text/tabwriter"
)

// ListFlags are those of every list.
type ListFlags struct {
	JSON bool `help:"Print for programs: every cell as text."`
}

// Table prints rows under their headings, or as objects named by them; without
// rows it says so.
func (p *Session) Table(f ListFlags, heads []string, rows [][]string, empty string) error {
	if f.JSON {
		return p.PrintJSON(objects(heads, rows))
	}
	cells := make([][]any, len(rows))
	for i, row := range rows {
		for _, cell := range row {
			cells[i] = append(cells[i], cell)
		}
	}
	return p.Columns(strings.Join(heads, "\t"), cells, empty)
}

// Columns prints rows under a line of headings parted by tabs; without rows it
// says so.
func (p *Session) Columns(head string, rows [][]any, empty string) error {
	if len(rows) == 0 {
		p.Say("%s", p.Printer.Word(empty))
		return nil
	}
	w := tabwriter.NewWriter(p.Stdout, 0, 0, 2, ' ', 0)
	heads := strings.Split(head, "\t")
	for i := range heads {
		heads[i] = p.Printer.Word(heads[i])
	}
	fmt.Fprintln(w, strings.Join(heads, "\t"))
	for _, row := range rows {
		fmt.Fprintf(w, strings.TrimSuffix(strings.Repeat("%v\t", len(row)), "\t")+"\n", p.Printer.AsShown(row)...)
	}
	return w.Flush()
}

// objects are rows with each cell under its heading: "Stored tare" is
// "stored_tare".
func objects(heads []string, rows [][]string) []map[string]string {
	out := make([]map[string]string, len(rows))
	for i, row := range rows {
		out[i] = map[string]string{}
		for j, cell := range row {
			out[i][strings.ReplaceAll(strings.ToLower(heads[j]), " ", "_")] = cell
		}
	}
	return out
}
