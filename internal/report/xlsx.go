package report

import (
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode/utf8"

	"github.com/xuri/excelize/v2"

	"tenthpoint/internal/message"
)

// XLSX writes the document as a workbook: a first sheet that describes it, then a sheet for each
// table. Figures are numbers a spreadsheet can add; each is written as the decimal text that
// prints, to the last zero.
func (d Document) XLSX(w io.Writer) error {
	book := &workbook{File: excelize.NewFile(), styles: map[cellLook]int{}, say: d.forPrograms()}
	book.front = book.say.Say("This paper")
	defer book.Close()
	book.about(d)
	for i, t := range d.Tables() {
		book.table(sheetName(book.say.Text(t.Name), i+1), t.printed(book.say))
	}
	book.SetActiveSheet(0)
	if book.failed != nil {
		return message.Errorf("the workbook cannot be made: %w", book.failed)
	}
	return book.Write(w)
}

type workbook struct {
	*excelize.File
	styles map[cellLook]int
	say    *message.Printer
	front  string // name of the first sheet
	failed error
}

// cellLook is the style of a cell.
type cellLook struct {
	kind   RowKind
	strong bool
	number bool
	parted bool // thousands by commas
	places int
}

// must keeps the first failure; the workbook is thrown away with it.
func (b *workbook) must(err error) {
	if b.failed == nil {
		b.failed = err
	}
}

// firstSheet is the library's name for the sheet of a new workbook.
const firstSheet = "Sheet1"

func (b *workbook) about(d Document) {
	b.must(b.SetSheetName(firstSheet, b.front))
	lines := append(slices.Clone(d.House), b.say.Text(d.Title), b.say.Text(d.About))
	lines = append(lines, texts(b.say, d.Marks)...)
	for _, block := range d.Blocks {
		switch block := block.(type) {
		case Para:
			lines = append(lines, b.say.Text(block.Text))
		case Pairs:
			for _, p := range block.Pairs {
				lines = append(lines, b.say.Text(p.Label)+": "+b.say.Text(p.Value))
			}
		}
	}
	row := 0
	for _, line := range append(lines, b.say.Text(d.Footer)) {
		if line != "" {
			row++
			b.must(b.SetCellStr(b.front, address(1, row), line))
		}
	}
	b.must(b.SetColWidth(b.front, "A", "A", 100)) // characters
}

func (b *workbook) table(sheet string, t printed) {
	_, err := b.NewSheet(sheet)
	b.must(err)
	for c, title := range t.titles() {
		b.put(sheet, c+1, 1, title, cellLook{strong: true})
	}
	for r, row := range t.rows {
		for c, printed := range row.cells {
			b.cell(sheet, c+1, r+2, printed, t.columns[c], row.kind)
		}
	}
	if len(t.rows) == 0 {
		b.put(sheet, 1, 2, t.empty, cellLook{})
	}
	b.widths(sheet, t)
	b.must(b.SetPanes(sheet, &excelize.Panes{Freeze: true, YSplit: 1, TopLeftCell: "A2", ActivePane: "bottomLeft"}))
}

func (b *workbook) cell(sheet string, column, row int, printed string, c column, kind RowKind) {
	plain, places, isNumber := number(printed)
	if c.align != Right || !isNumber {
		b.put(sheet, column, row, printed, cellLook{kind: kind})
		return
	}
	at := address(column, row)
	// The library's only method that writes a number as text.
	b.must(b.SetCellDefault(sheet, at, plain))
	b.set(sheet, at, cellLook{kind: kind, number: true, parted: strings.Contains(printed, ","), places: places})
}

func (b *workbook) put(sheet string, column, row int, text string, l cellLook) {
	at := address(column, row)
	b.must(b.SetCellStr(sheet, at, text))
	b.set(sheet, at, l)
}

func (b *workbook) set(sheet, at string, l cellLook) {
	style, known := b.styles[l]
	if !known {
		var err error
		style, err = b.NewStyle(l.style())
		b.must(err)
		b.styles[l] = style
	}
	b.must(b.SetCellStyle(sheet, at, at, style))
}

func (l cellLook) style() *excelize.Style {
	s := &excelize.Style{Font: &excelize.Font{Bold: l.strong || l.kind == Total, Strike: l.kind == Struck}}
	if l.strong {
		s.Alignment = &excelize.Alignment{WrapText: true, Vertical: "top"}
	}
	if l.kind == Total {
		s.Border = []excelize.Border{{Type: "top", Style: 1, Color: "000000"}}
	}
	if l.number {
		format := "0"
		if l.parted {
			format = "#,##0"
		}
		if l.places > 0 {
			format += "." + strings.Repeat("0", l.places)
		}
		s.CustomNumFmt = &format
	}
	return s
}

func address(column, row int) string {
	at, err := excelize.CoordinatesToCellName(column, row)
	if err != nil {
		panic("report: " + err.Error()) // beyond a million rows
	}
	return at
}

// sheetName makes a table's name valid in a workbook: at most 31 characters, without special ones.
func sheetName(name string, n int) string {
	name = strings.NewReplacer(":", " ", "\\", " ", "/", " ", "?", " ", "*", " ", "[", " ", "]", " ").Replace(name)
	name = fmt.Sprintf("%d %s", n, name)
	for utf8.RuneCountInString(name) > 31 {
		_, size := utf8.DecodeLastRuneInString(name)
		name = name[:len(name)-size]
	}
	return strings.TrimSpace(name)
}
