package pdf

import (
	"bytes"
	"fmt"
	"io"
	"regexp"
	"strconv"
	"testing"
	"time"

	"tenthpoint/internal/paper"
)

func sample(words ...string) paper.Layout {
	l := paper.Layout{Title: "Sample é", Made: time.Date(2026, 10, 14, 15, 22, 11, 0, time.UTC), Width: 200 * paper.Point, Height: 300 * paper.Point}
	for i, w := range words {
		var m paper.Marks
		m.Stamp = &paper.Stamp{Text: "VOID", Style: paper.Style{Size: 40 * paper.Point, Bold: true, Ink: paper.Grey(230)}}
		m.Box(10*paper.Point, 10*paper.Point, 50*paper.Point, 20*paper.Point, paper.Grey(240), paper.Grey(0))
		m.Line(10*paper.Point, 50*paper.Point, 190*paper.Point, 50*paper.Point, 0.5*paper.Point, paper.Grey(0))
		m.Picture(20*paper.Point, 60*paper.Point, 30*paper.Point, 30*paper.Point, &paper.Code{Columns: 3, Rows: 3, Dark: []paper.DarkRun{{Column: 0, Row: 0, Length: 3}, {Column: 1, Row: 2, Length: 1}}})
		m.Text(20*paper.Point, 100*paper.Point, w, paper.Style{Size: 8 * paper.Point, Bold: i%2 == 1, Ink: paper.Grey(0)})
		l.Pages = append(l.Pages, m)
	}
	return l
}

func written(t testing.TB, papers ...paper.Layout) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, papers...); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// TestEveryObjectIsWhereTheTableSays: a reader finds objects by the table at the
// end, and nothing else.
func TestEveryObjectIsWhereTheTableSays(t *testing.T) {
	file := written(t, sample("one (and) \\ a half", "two"), sample("three"))
	at := bytes.LastIndex(file, []byte("startxref\n"))
	start, err := strconv.Atoi(string(regexp.MustCompile(`\d+`).Find(file[at:])))
	if err != nil || !bytes.HasPrefix(file[start:], []byte("xref\n")) {
		t.Fatalf("the table of objects is not at %d (%v)", start, err)
	}
	rows := regexp.MustCompile(`(\d{10}) 00000 n \n`).FindAllSubmatch(file[start:], -1)
	if len(rows) < lastFixed+6 {
		t.Fatalf("%d objects", len(rows))
	}
	for i, row := range rows {
		place, err := strconv.Atoi(string(row[1]))
		if want := fmt.Sprintf("%d 0 obj\n", i+1); err != nil || !bytes.HasPrefix(file[place:], []byte(want)) {
			t.Errorf("object %d is not at %d", i+1, place)
		}
	}
	for _, row := range regexp.MustCompile(`/Length (\d+)[^>]*>>\nstream\n`).FindAllSubmatchIndex(file, -1) {
		length, err := strconv.Atoi(string(file[row[2]:row[3]]))
		if err != nil || !bytes.HasPrefix(file[row[1]+length:], []byte("\nendstream")) {
			t.Errorf("the stream at %d does not end after %d bytes", row[1], length)
		}
	}
}

func TestSamePapersSameBytes(t *testing.T) {
	if !bytes.Equal(written(t, sample("one", "two")), written(t, sample("one", "two"))) {
		t.Error("the second time the file is another")
	}
	if bytes.Equal(written(t, sample("one")), written(t, sample("two"))) {
		t.Error("other words, and the same file")
	}
}

func TestFileWithoutPage(t *testing.T) {
	if err := Write(io.Discard); err == nil {
		t.Error("a file without a page was made")
	}
}

func TestNumbers(t *testing.T) {
	for l, want := range map[paper.Length]string{0: "0", 7900: "7.9", 12345: "12.345", -500: "-0.5", 1000: "1", 30: "0.03"} {
		if got := string(appendThousandths(nil, l)); got != want {
			t.Errorf("%d thousandths are written %q, want %q", l, got, want)
		}
	}
}
