package model

import "strings"

// TabSeparated are rows as text that a spreadsheet takes apart again: a line for each, its cells between
// tabs, under the headings where there are columns.
func TabSeparated(columns []Column, rows []Row) string {
	var b strings.Builder
	line := func(cells []string) {
		for i, cell := range cells {
			if i > 0 {
				b.WriteByte('\t')
			}
			b.WriteString(oneLine.Replace(cell))
		}
		b.WriteByte('\n')
	}
	if len(columns) > 0 {
		titles := make([]string, len(columns))
		for i, c := range columns {
			titles[i] = c.Title
		}
		line(titles)
	}
	for _, row := range rows {
		line(row.Cells)
	}
	return b.String()
}

// oneLine keeps a cell in its place.
var oneLine = strings.NewReplacer("\t", " ", "\n", " ", "\u2212", "-")

// TextOfCard is a card as text: a line for each of its lines, the two sides between a tab.
func TextOfCard(lines []CardLine) string {
	var b strings.Builder
	for _, l := range lines {
		text := l.Left
		if l.Right != "" {
			text += "\t" + l.Right
		}
		if l.Note != "" {
			text += "\n" + l.Note
		}
		if text != "" {
			b.WriteString(text + "\n")
		}
	}
	return b.String()
}
