package book

import (
	"encoding/json"
	"maps"
	"slices"
	"strings"

	"tenthpoint/internal/bin"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// A row of a bin is kept as lines of text. A bin has up to sixty layers with the same few factors, so
// the names are written once, as the columns of a table:
//
//	moisture lb·%,test-weight bu
//	102020 0 0 0 0 0
//	2026-10-29 186140 =2111386 =3357.3741
//	2026-08-30 2026-08-26 573400 =7313624 330040:10168.4
//	2026-08-31 = 59680 =728136 -
//
// The second line has what trucks took, took back and returned, what movements brought and took, and
// what is short. The third is what trucks brought, as grain: oldest day, weight, and of each factor the
// sum, after the weight it was measured of ("=" for all). A layer has the day it was filled before that,
// and "=" where the oldest grain in it is of that day. All weights are in the unit of the row.

// column is a factor, and the unit of its sums.
type column struct {
	factor grain.FactorID
	unit   quantity.Unit
}

// absent stands for a factor that was not measured, and for the day of no grain; same for the whole
// weight, and for the day a layer was filled.
const (
	absent = "-"
	same   = "="
)

// EncodeBinRow writes a row without its place and day, see [DecodeBinRow].
func EncodeBinRow(r bin.Row) string {
	columns := columnsOf(r)
	var b strings.Builder
	for i, c := range columns {
		if i > 0 {
			b.WriteByte(',')
		}
		b.WriteString(string(c.factor) + " " + c.unit.String())
	}
	b.WriteByte('\n')
	for i, a := range figuresOf(&r) {
		if i > 0 {
			b.WriteByte(' ')
		}
		b.WriteString(a.StoredFigure())
	}
	b.WriteByte('\n')
	writeGrain(&b, r.In, dayText(r.In.Oldest), columns)
	for _, l := range r.Close.Layers {
		oldest := dayText(l.Oldest)
		if l.Oldest == l.Filled {
			oldest = same
		}
		b.WriteString("\n" + dayText(l.Filled) + " ")
		writeGrain(&b, l.Grain, oldest, columns)
	}
	return b.String()
}

// figuresOf are the weights of a row beside its grain.
func figuresOf(r *bin.Row) []*quantity.Amount {
	return []*quantity.Amount{&r.Out, &r.Back, &r.Returned, &r.MovedIn, &r.MovedOut, &r.Close.Short}
}

// columnsOf are the factors that a row has results of, by name; one in two units has two columns.
func columnsOf(r bin.Row) []column {
	found := map[column]bool{}
	collect := func(g bin.Grain) {
		for id, m := range g.Measured {
			found[column{id, m.Sum.Unit()}] = true
		}
	}
	collect(r.In)
	for _, l := range r.Close.Layers {
		collect(l.Grain)
	}
	return slices.SortedFunc(maps.Keys(found), func(a, b column) int {
		return strings.Compare(string(a.factor)+" "+a.unit.String(), string(b.factor)+" "+b.unit.String())
	})
}

func dayText(d quantity.Date) string {
	if d.IsZero() {
		return absent
	}
	return d.String()
}

func writeGrain(b *strings.Builder, g bin.Grain, oldest string, columns []column) {
	b.WriteString(oldest + " " + g.Weight.StoredFigure())
	for _, c := range columns {
		b.WriteByte(' ')
		m, known := g.Measured[c.factor]
		switch {
		case !known || m.Sum.Unit() != c.unit:
			b.WriteString(absent)
		case m.Of.Equal(g.Weight):
			b.WriteString(same + m.Sum.StoredFigure())
		default:
			b.WriteString(m.Of.StoredFigure() + ":" + m.Sum.StoredFigure())
		}
	}
}

// DecodeBinRow reads what EncodeBinRow wrote, or the JSON object that books had until migration 12.
func DecodeBinRow(p bin.Place, day, text string) (bin.Row, error) {
	date, err := quantity.ParseDate(day)
	r := bin.Row{Place: p, Day: date}
	if err == nil && strings.HasPrefix(text, "{") {
		err = readBinObject(text, &r)
	} else if err == nil {
		err = readBinLines(text, &r)
	}
	if err != nil {
		return bin.Row{}, message.Errorf("what lay in bin %q on %s cannot be read: %w", p.Bin, day, err)
	}
	return r, nil
}

func readBinObject(text string, r *bin.Row) error {
	body := struct {
		*bin.Tally
		MovedIn  *quantity.Amount `json:"moved_in"`
		MovedOut *quantity.Amount `json:"moved_out"`
		Close    *bin.Heap        `json:"close"`
	}{&r.Tally, &r.MovedIn, &r.MovedOut, &r.Close}
	return json.Unmarshal([]byte(text), &body)
}

func readBinLines(text string, r *bin.Row) error {
	lines := strings.Split(text, "\n")
	if len(lines) < 3 {
		return wrongLine(text)
	}
	columns, err := readColumns(lines[0])
	if err == nil {
		err = readFigures(lines[1], r)
	}
	if err == nil {
		r.In, err = readGrain(lines[2], strings.Split(lines[2], " "), r.Unit, columns)
	}
	for _, line := range lines[3:] {
		if err != nil {
			return err
		}
		var l bin.Layer
		l, err = readLayer(line, r.Unit, columns)
		r.Close.Layers = append(r.Close.Layers, l)
	}
	return err
}

func readFigures(line string, r *bin.Row) (err error) {
	figures, words := figuresOf(r), strings.Split(line, " ")
	if len(words) != len(figures) {
		return wrongLine(line)
	}
	for i, word := range words {
		if *figures[i], err = quantity.ReadStoredFigure(word, r.Unit); err != nil {
			return err
		}
	}
	return nil
}

func wrongLine(line string) error {
	return message.Storage.Errorf("the line %.60q is not what a row of a bin has there", line)
}

func readColumns(line string) (out []column, err error) {
	if line == "" {
		return nil, nil
	}
	for name := range strings.SplitSeq(line, ",") {
		factor, unitText, _ := strings.Cut(name, " ")
		unit, err := quantity.ParseUnit(unitText)
		if err != nil {
			return nil, err
		}
		if factor == "" || unit == quantity.Plain {
			return nil, wrongLine(line)
		}
		out = append(out, column{grain.FactorID(factor), unit})
	}
	return out, nil
}

func readLayer(line string, unit quantity.Unit, columns []column) (l bin.Layer, err error) {
	words := strings.Split(line, " ")
	if l.Filled, err = readDay(words[0]); err != nil {
		return l, err
	}
	if len(words) > 1 && words[1] == same {
		words[1] = words[0]
	}
	l.Grain, err = readGrain(line, words[1:], unit, columns)
	return l, err
}

func readDay(word string) (quantity.Date, error) {
	if word == absent {
		return quantity.Date{}, nil
	}
	return quantity.ParseDate(word)
}

// readGrain reads the words of a line from the oldest day on.
func readGrain(line string, words []string, unit quantity.Unit, columns []column) (g bin.Grain, err error) {
	if len(words) != 2+len(columns) {
		return g, wrongLine(line)
	}
	if g.Oldest, err = readDay(words[0]); err != nil {
		return g, err
	}
	if g.Weight, err = quantity.ReadStoredFigure(words[1], unit); err != nil {
		return g, err
	}
	for i, c := range columns {
		word := words[2+i]
		if word == absent {
			continue
		}
		m, err := readMeasured(word, g.Weight, c.unit)
		if err != nil {
			return g, err
		}
		if g.Measured == nil {
			g.Measured = make(map[grain.FactorID]bin.Measured, len(columns))
		}
		g.Measured[c.factor] = m
	}
	return g, nil
}

// readMeasured reads a factor of some grain, whose sum is in a unit.
func readMeasured(word string, weight quantity.Amount, unit quantity.Unit) (m bin.Measured, err error) {
	m.Of = weight
	sum, all := strings.CutPrefix(word, same)
	if !all {
		var of string
		of, sum, _ = strings.Cut(word, ":")
		if m.Of, err = quantity.ReadStoredFigure(of, weight.Unit()); err != nil {
			return m, err
		}
	}
	m.Sum, err = quantity.ReadStoredFigure(sum, unit)
	return m, err
}
