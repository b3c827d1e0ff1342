package paper

import (
	"testing"

	"pgregory.net/rapid"
)

var testFrame = Frame{Width: 200 * Point, Height: 300 * Point, Side: 20 * Point, Top: 20 * Point, Bottom: 20 * Point, Running: 10 * Point}

func block(name string, height Length) Block {
	b := Block{Height: height, Above: 2 * Point}
	b.Text(0, height, name, Style{Size: 8 * Point})
	return b
}

// TestBlocksStayWhole: no block runs over the foot of its page, none is lost, and
// their order stays.
func TestBlocksStayWhole(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := NewFlow(testFrame)
		n := rapid.IntRange(1, 80).Draw(t, "blocks")
		blocks := make([]Block, n)
		for i := range blocks {
			blocks[i] = block(string(rune('A'+i%26)), Length(rapid.IntRange(1, 100).Draw(t, "height"))*Point)
			blocks[i].Tied = rapid.IntRange(0, 9).Draw(t, "tied") == 0
		}
		f.Add(blocks...)
		at := 0
		for _, page := range f.Pages {
			for _, r := range page.Runs {
				if r.Text != string(rune('A'+at%26)) {
					t.Fatalf("block %d is %q", at, r.Text)
				}
				if r.At.Y > f.Foot() {
					t.Fatalf("block %d ends at %d, below the foot", at, r.At.Y)
				}
				at++
			}
		}
		if at != n {
			t.Fatalf("%d of %d blocks are on the pages", at, n)
		}
	})
}

// TestTitleStaysWithItsText: a tied block is never the last of a page.
func TestTitleStaysWithItsText(t *testing.T) {
	for before := range 30 {
		f := NewFlow(testFrame)
		for range before {
			f.Add(block("row", 9*Point))
		}
		title := block("title", 12*Point)
		title.Tied = true
		f.Add(title, block("text", 30*Point))
		last := f.Page().Runs
		if n := len(last); n < 2 || last[n-2].Text != "title" {
			t.Errorf("after %d rows the title stands apart from its text: %v", before, last)
		}
	}
}

// TestHeadIsRepeated: the head of a table is on every page of it.
func TestHeadIsRepeated(t *testing.T) {
	head := block("head", 10*Point)
	f := NewFlow(testFrame)
	f.Add(head)
	for range 100 {
		row := block("row", 9*Point)
		row.Again = &head
		f.Add(row)
	}
	if len(f.Pages) < 3 {
		t.Fatalf("%d pages", len(f.Pages))
	}
	for n, page := range f.Pages {
		if page.Runs[0].Text != "head" {
			t.Errorf("page %d begins with %q", n+1, page.Runs[0].Text)
		}
	}
}

// TestColumnsHoldEverything: two columns lose nothing and keep the order down the
// left and then the right.
func TestColumnsHoldEverything(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := NewFlow(testFrame)
		n := rapid.IntRange(0, 200).Draw(t, "blocks")
		blocks := make([]Block, n)
		for i := range blocks {
			blocks[i] = block("x", Length(rapid.IntRange(3, 40).Draw(t, "height"))*Point)
		}
		f.Columns(blocks, 10*Point)
		got := 0
		for _, page := range f.Pages {
			x, y := Length(0), Length(0)
			for _, r := range page.Runs {
				if r.At.X < x || r.At.X == x && r.At.Y <= y {
					t.Fatal("a block stands before the one it follows")
				}
				x, y = r.At.X, r.At.Y
				got++
			}
		}
		if got != n {
			t.Fatalf("%d of %d blocks", got, n)
		}
	})
}

// TestUnknownLettersAreQuestionMarks: a letter that the fonts lack is seen to be
// missing, and measured as what is printed for it.
func TestUnknownLettersAreQuestionMarks(t *testing.T) {
	s := Style{Size: 10 * Point}
	if got := Shown("Ærø 漢 ½ Жук", false); got != "Ærø ? ½ Жук" {
		t.Errorf("shown as %q", got)
	}
	if s.Width("漢") != s.Width("?") {
		t.Error("a letter that is not there has a width of its own")
	}
}

// TestWidthsGrowWithSize: a text twice as large is twice as wide, to the thousandth.
func TestWidthsGrowWithSize(t *testing.T) {
	const text = "52,300 lb × (18.4 % − 15.0 %)"
	one, two := Style{Size: 7 * Point}.Width(text), Style{Size: 14 * Point}.Width(text)
	if d := two - 2*one; d < -1 || d > 1 || one == 0 {
		t.Errorf("%d and %d", one, two)
	}
}
