package gallery

import (
	"strings"
	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/paint"
	"tenthpoint/ui/paperview"
	"tenthpoint/ui/widgettest"
	"testing"

	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
	"pgregory.net/rapid"
)

var prose = paint.TextStyle{Size: theme.SizeNameText, Color: apptheme.ColorInk}

func testPen(t *testing.T) paint.Painter {
	t.Helper()
	test.NewTempApp(t)
	test.ApplyTheme(t, apptheme.NewTheme(false, apptheme.TextOrdinary))
	return paint.PainterFor(canvas.NewRectangle(nil))
}

// A figure and its sign are never separated at the end of a line.
func TestWrapKeepsWhatIsTied(t *testing.T) {
	p := testPen(t)
	for width := float32(40); width < 400; width += 10 {
		for _, line := range p.Wrap("water from 17.2\u00a0% down to 15.0\u00a0% of the wet weight", prose, width) {
			if strings.HasPrefix(line, "%") || strings.HasSuffix(line, "17.2") || strings.HasSuffix(line, "15.0") {
				t.Errorf("at %v a line is %q", width, line)
			}
		}
	}
	if words := paperview.WordsIn([]paperview.Span{{Text: "Rows", Bold: true}, {Text: "\u00a0: all of it"}}, prose); len(words) != 5 || !words[1].Tied {
		t.Errorf("the colon is not tied to its word: %+v", words)
	}
}

// TestWrapLosesNothing: the words come out as they went in, and a line runs
// over only when a single word is wider than it.
func TestWrapLosesNothing(t *testing.T) {
	p := testPen(t)
	rapid.Check(t, func(t *rapid.T) {
		words := rapid.SliceOfN(rapid.StringMatching(`[a-zé0-9.,=-]{1,12}`), 1, 12).Draw(t, "words")
		width := float32(rapid.IntRange(10, 300).Draw(t, "width"))
		lines := p.Wrap(strings.Join(words, " "), prose, width)
		if got := strings.Join(lines, " "); got != strings.Join(words, " ") {
			t.Fatalf("%q became %q", strings.Join(words, " "), got)
		}
		for _, line := range lines {
			if p.Measure(line, prose).Width > width && strings.Contains(line, " ") {
				t.Fatalf("the line %q is wider than %v and could be broken", line, width)
			}
		}
	})
}

func TestWrapKeepsLineBreaks(t *testing.T) {
	p := testPen(t)
	widgettest.Equal(t, "lines", strings.Join(p.Wrap("one\ntwo", prose, 1000), "|"), "one|two")
	widgettest.Equal(t, "no text, no line", len(p.Wrap("", prose, 1000)), 0)
}

// TestClipFits: truncated text ends with three dots, and is as long as there is room for.
func TestClipFits(t *testing.T) {
	p := testPen(t)
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringMatching(`[a-zéW 0-9]{1,30}`).Draw(t, "text")
		width := float32(rapid.IntRange(20, 200).Draw(t, "width"))
		got := p.Clip(text, prose, width)
		if p.Measure(got, prose).Width > width {
			t.Fatalf("%q is wider than %v", got, width)
		}
		if got == text {
			return
		}
		kept, dotted := strings.CutSuffix(got, "…")
		if !dotted || !strings.HasPrefix(text, kept) {
			t.Fatalf("%q was cut to %q", text, got)
		}
		rest := []rune(text)[len([]rune(kept)):]
		more := kept + string(rest[:len(rest)-len([]rune(strings.TrimLeft(string(rest), " ")))+1])
		if len([]rune(more)) < len([]rune(text)) && p.Measure(more+"…", prose).Width <= width {
			t.Fatalf("%q was cut to %q, but %q fits in %v", text, got, more, width)
		}
	})
}

// TestDigitsAreEquallyWide: columns of figures rest on it, in every size.
func TestDigitsAreEquallyWide(t *testing.T) {
	p := testPen(t)
	for _, l := range []paint.TextStyle{prose, {Size: apptheme.SizeFigure, Style: paint.Bold}, paperview.PaperSmall, paperview.PaperBold} {
		want := p.Measure("0", l).Width
		for _, digit := range "123456789" {
			if got := p.Measure(string(digit), l).Width; got != want {
				t.Errorf("%c is %v wide and 0 is %v", digit, got, want)
			}
		}
	}
}

func TestThousandths(t *testing.T) {
	for _, c := range []struct {
		permille int
		want     float32
	}{{0, 0}, {500, 100}, {1000, 200}} {
		widgettest.Equal(t, "along", paint.Along(c.permille, 200), c.want)
	}
	widgettest.Equal(t, "below", paint.Within(-5), 0)
	widgettest.Equal(t, "above", paint.Within(1200), 1000)
	widgettest.Equal(t, "floor", paint.Floor(-0.5), -1)
	widgettest.Equal(t, "floor", paint.Floor(2.9), 2)
	widgettest.Equal(t, "floor", paint.Floor(-2), -2)
}

// TestMinusStandsOnTheLine: a figure below zero is as high as one above.
func TestMinusStandsOnTheLine(t *testing.T) {
	p := testPen(t)
	above, below := p.WriteEnding("12 lb", prose, 100, 0), p.WriteEnding("−12 lb", prose, 100, 0)
	if above.MinSize().Height != below.MinSize().Height || p.Measure("−12 lb", prose) != below.MinSize() {
		t.Errorf("12 lb is %v, −12 lb %v, measured %v", above.MinSize(), below.MinSize(), p.Measure("−12 lb", prose))
	}
}
