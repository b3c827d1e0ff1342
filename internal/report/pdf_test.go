package report

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"tenthpoint/internal/message"
	"tenthpoint/internal/paper/pdf/pdfwords"
)

func pdfOf(t testing.TB, d Document, p Page) []byte {
	t.Helper()
	b, err := d.PDF(p)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func pages(t testing.TB, d Document, p Page) [][]string {
	t.Helper()
	words, err := pdfwords.Pages(pdfOf(t, d, p))
	if err != nil {
		t.Fatal(err)
	}
	return words
}

func TestSameDocumentSameBytes(t *testing.T) {
	for _, p := range []Page{{}, {Paper: A4}, {Landscape: true}} {
		first := pdfOf(t, sample(), p)
		for range 5 {
			if !bytes.Equal(first, pdfOf(t, sample(), p)) {
				t.Fatalf("%+v: the bytes differ from one time to the next", p)
			}
		}
	}
}

func TestDateIsTheDocuments(t *testing.T) {
	if b := pdfOf(t, sample(), Page{}); !bytes.Contains(b, []byte("(D:20261003220000)")) {
		t.Error("the file does not carry the document's own date")
	}
	undated := sample()
	undated.Made = time.Time{}
	if b := pdfOf(t, undated, Page{}); !bytes.Contains(b, []byte("(D:20000101000000)")) {
		t.Error("a document without a date takes one from somewhere")
	}
}

// Every page repeats title and marks and knows its number; every page of a
// table repeats the titles of its columns.
func TestPagesAreWhole(t *testing.T) {
	all := pages(t, sample(), Page{})
	if len(all) < 4 {
		t.Fatalf("%d pages; the long table should take several", len(all))
	}
	for i, page := range all {
		want := []string{"EXAMPLE - NOT FOR TRADE", fmt.Sprintf("page %d of %d", i+1, len(all))}
		if i > 0 {
			want = append(want, "Day sheet, Saturday 2026-10-03", "Grower", "Bushels")
		}
		for _, w := range want {
			if !slices.Contains(page, w) {
				t.Errorf("page %d does not say %q", i+1, w)
			}
		}
	}
}

// A heading is never alone at the foot of a page, and a total never alone on the next one.
func TestNothingIsLeftAlone(t *testing.T) {
	for rows := range 90 {
		d := Document{Title: message.New("T"), Blocks: []Block{longTable(rows), Heading{message.New("The next part")}, longTable(3)}}
		d.Blocks[2] = Table{Columns: []Column{{Title: message.New("Only")}}, Rows: []Row{{Cells: names("first row")}, {Cells: names("second row")}}}
		for i, page := range pages(t, d, Page{Landscape: true}) {
			if at := slices.Index(page, "The next part"); at >= 0 && !slices.Contains(page[at:], "second row") {
				t.Errorf("%d rows: the heading is alone at the foot of page %d", rows, i+1)
			}
			if at := slices.Index(page, "6,276,000"); rows > 0 && at >= 0 && !slices.Contains(page, "52,300") {
				t.Errorf("%d rows: the total is alone on page %d", rows, i+1)
			}
		}
	}
}

// All text of a document is on its pages, whole and in order.
func TestEveryWordIsPrinted(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		word := rapid.StringMatching(`[A-Za-z0-9(),.%$°×−\\]{1,14}`)
		text := rapid.Custom(func(t *rapid.T) string {
			return strings.Join(rapid.SliceOfN(word, 1, 25).Draw(t, "words"), " ")
		})
		d := Document{Title: message.Name(text.Draw(t, "title")), Footer: message.Name(text.Draw(t, "footer"))}
		var want []string
		add := func(s string) message.Text { want = append(want, strings.Fields(s)...); return message.Name(s) }
		for range rapid.IntRange(1, 8).Draw(t, "blocks") {
			switch rapid.IntRange(0, 3).Draw(t, "kind") {
			case 0:
				d.Blocks = append(d.Blocks, Para{Text: add(text.Draw(t, "para"))})
			case 1:
				d.Blocks = append(d.Blocks, Heading{Text: add(word.Draw(t, "heading"))})
			case 2:
				table := Table{Columns: []Column{{Title: add(word.Draw(t, "column"))}}}
				for range rapid.IntRange(1, 60).Draw(t, "rows") {
					table.Rows = append(table.Rows, Row{Cells: []message.Text{add(text.Draw(t, "cell"))}})
				}
				d.Blocks = append(d.Blocks, table)
			case 3:
				d.Blocks = append(d.Blocks, Pairs{[]Pair{{Label: add(word.Draw(t, "label")), Value: add(text.Draw(t, "value"))}}})
			}
		}
		b, err := d.PDF(Page{})
		if err != nil {
			t.Fatal(err)
		}
		words, err := pdfwords.Pages(b)
		if err != nil {
			t.Fatal(err)
		}
		got := strings.Fields(strings.Join(slices.Concat(words...), " "))
		for _, w := range want {
			at := slices.Index(got, w)
			if at < 0 {
				t.Fatalf("%q is missing or out of its place", w)
			}
			got = got[at+1:]
		}
	})
}
