package report

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"tenthpoint/internal/message"
	"testing"

	"github.com/xuri/excelize/v2"
)

func TestNumber(t *testing.T) {
	for _, c := range []struct {
		printed, plain string
		places         int
		isNumber       bool
	}{
		{"52,300", "52300", 0, true},
		{"812.40", "812.40", 2, true},
		{"-1,624.880", "-1624.880", 3, true},
		{"−5", "-5", 0, true},
		{"0", "0", 0, true},
		{"price later", "price later", 0, false},
		{"", "", 0, false},
		{"-", "-", 0, false},
		{"12.", "12.", 0, false},
		{".5", ".5", 0, false},
		{"1.2.3", "1.2.3", 0, false},
		{"$4.15", "$4.15", 0, false},
		{"15.5 %", "15.5 %", 0, false},
		{"1e9", "1e9", 0, false},
	} {
		plain, places, isNumber := number(c.printed)
		if plain != c.plain || places != c.places || isNumber != c.isNumber {
			t.Errorf("number(%q) = %q, %d, %v", c.printed, plain, places, isNumber)
		}
	}
}

func exact() Table {
	return Table{Name: message.New("exact"), Columns: []Column{{Title: message.New("Grower, name")}, {Title: message.New("Bushels"), Align: Right}, {Title: message.New("No."), Align: Right}, {Title: message.New("No. as words")}},
		Rows: []Row{
			{Cells: names(`A "Sample", Farm`, "1,812.40", "1041", "1,041")},
			{Cells: names("B", "0.10", "1042", "2")},
			{Cells: names("C", "price later", "1043", "3"), Kind: Struck},
			{Cells: names("D", "123,456,789,012.345", "1044", "4")},
			{Cells: names("All", "123,456,790,824.845", "", ""), Kind: Total},
		}}
}

func TestCSV(t *testing.T) {
	var out strings.Builder
	if err := (Document{}).CSV(&out, exact()); err != nil {
		t.Fatal(err)
	}
	want := "\"Grower, name\",Bushels,No.,No. as words\n\"A \"\"Sample\"\", Farm\",1812.40,1041,\"1,041\"\nB,0.10,1042,2\nC,price later,1043,3\n" +
		"D,123456789012.345,1044,4\nAll,123456790824.845,,\n"
	if out.String() != want {
		t.Errorf("got\n%s\nwant\n%s", out.String(), want)
	}
}

// TestCSVIsAlikeInEveryLanguage: headings are of the language, names and figures are written alike for an elevator with a decimal
// comma.
func TestCSVIsAlikeInEveryLanguage(t *testing.T) {
	var english, french strings.Builder
	if err := errors.Join((Document{}).CSV(&english, exact()), (Document{Language: "fr"}).CSV(&french, exact())); err != nil {
		t.Fatal(err)
	}
	if want := strings.Replace(english.String(), "Bushels", "Boisseaux", 1); french.String() != want {
		t.Errorf("got\n%s\nwant\n%s", french.String(), want)
	}
}

// A figure in a workbook is a number, and the very text that prints.
func TestWorkbookKeepsEveryDigit(t *testing.T) {
	d := sample()
	d.Blocks = append(d.Blocks, exact())
	var out bytes.Buffer
	if err := d.XLSX(&out); err != nil {
		t.Fatal(err)
	}
	var again bytes.Buffer
	if err := d.XLSX(&again); err != nil || !bytes.Equal(out.Bytes(), again.Bytes()) {
		t.Error("the same document gives another workbook the second time", err)
	}
	book, err := excelize.OpenReader(&out)
	if err != nil {
		t.Fatal(err)
	}
	if got := book.GetSheetList(); strings.Join(got, "|") != "This paper|1 corn|2 none|3 tickets|4 exact" {
		t.Errorf("sheets %q", got)
	}
	for at, want := range map[string]string{"A1": "Grower, name", "B2": "1812.40", "B3": "0.10", "B4": "price later", "B5": "123456789012.345", "C2": "1041", "D2": "1,041"} {
		got, err := book.GetCellValue("4 exact", at, excelize.Options{RawCellValue: true})
		if err != nil || got != want {
			t.Errorf("%s holds %q, want %q (%v)", at, got, want, err)
		}
	}
	for at, want := range map[string]excelize.CellType{"B2": excelize.CellTypeUnset, "B4": excelize.CellTypeSharedString, "D2": excelize.CellTypeSharedString} {
		if got, err := book.GetCellType("4 exact", at); err != nil || got != want {
			t.Errorf("%s is of type %d, want %d (%v)", at, got, want, err)
		}
	}
	if got, _ := book.GetCellValue("2 none", "A2"); got != "No ticket was voided." {
		t.Errorf("an empty table says %q", got)
	}
}

func TestText(t *testing.T) {
	d := sample()
	d.Blocks = append(d.Blocks[:len(d.Blocks)-1], longTable(8))
	golden(t, "sample.txt", d.Text(100))
}

// On a screen no line is longer than the screen, and every figure is still there in one piece.
func TestFoldedTablesKeepEveryFigure(t *testing.T) {
	d := sample()
	d.Blocks = append(d.Blocks[:len(d.Blocks)-1], longTable(8))
	for _, width := range []int{60, 80, 100, 200} {
		text := d.Folded(width)
		for _, line := range strings.Split(text, "\n") {
			if n := len([]rune(line)); n > width {
				t.Errorf("a line of %d letters at %d: %q", n, width, line)
			}
		}
		words := strings.Fields(text)
		for _, field := range strings.Fields(d.Text(width)) {
			if strings.ContainsAny(field, "0123456789") && !slices.Contains(words, field) {
				t.Errorf("%s is not in the text folded at %d", field, width)
			}
		}
	}
}

func golden(t *testing.T, name, got string) {
	t.Helper()
	path := filepath.Join("..", "..", "testdata", "report", name)
	if *update {
		if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if string(want) != got {
		t.Errorf("%s is not what is set now:\n%s", path, got)
	}
}
