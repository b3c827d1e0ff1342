package paperview

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"tenthpoint/internal/paper"
	"tenthpoint/internal/paper/pdf"
	"tenthpoint/internal/scaleticket"
	"tenthpoint/internal/scaleticket/sheet"
	"tenthpoint/internal/tickettest"

	"fyne.io/fyne/v2"
)

// The window's slip and its PDF are laid over each other as pictures, drawn by two programs that
// know nothing of each other: Fyne's painter and poppler. Ink is stray where the other picture has
// none near it; it is counted in fields of the page, so that one letter is not lost among all.
const (
	dotsToThePoint = 3  // 216 to the inch, as a printer of slips has
	besides        = 2  // dots by which a stroke may lie beside itself: the window sets lines and codes on whole pixels
	fieldOfPage    = 24 // dots each way
	mostStray      = 4  // dots of stray ink in any field: rasterising
)

// TestWindowAndPDFLieOverEachOther compares what is seen, where the other tests compare what is set.
func TestWindowAndPDFLieOverEachOther(t *testing.T) {
	for _, name := range []string{"corn", "tonnes", "outbound"} {
		layout := sheet.Layout(scaleticket.Compose(tickettest.Named(t, name)), sheet.HalfLetter, sheet.Options{})
		if stray := strayInk(windowPicture(t, layout), pdfPicture(t, layout)); stray > mostStray {
			t.Errorf("%s: %d dots of ink in a field have none of the other picture near them, at most %d may", name, stray, mostStray)
		}
	}
}

// TestStrayInkIsSeen: one letter of a slip is more than rasterising.
func TestStrayInkIsSeen(t *testing.T) {
	ticket := tickettest.Corn(t)
	window := windowPicture(t, sheet.Layout(scaleticket.Compose(ticket), sheet.HalfLetter, sheet.Options{}))
	ticket.Load.Details.Driver = "E. Driver"
	page := pdfPicture(t, sheet.Layout(scaleticket.Compose(ticket), sheet.HalfLetter, sheet.Options{}))
	if stray := strayInk(window, page); stray <= mostStray {
		t.Errorf("another driver, and %d dots are stray", stray)
	}
}

// windowPicture is the first page as the window draws it, where its paper lies.
func windowPicture(t *testing.T, l paper.Layout) *image.Gray {
	t.Helper()
	l.Pages = l.Pages[:1]
	side := (&Pages{layout: l}).side()
	width := dotsToThePoint * float32(l.Width-2*side) / paper.Point
	p := shown(t, l, fyne.NewSize(width, 2400))
	v := p.View()
	seen := fyne.CurrentApp().Driver().CanvasForObject(p).Capture()
	return asPage(seen, l, -v.left, -v.tops[0], dotsToThePoint/v.scale)
}

// pdfPicture is the first page of the PDF.
func pdfPicture(t *testing.T, l paper.Layout) *image.Gray {
	t.Helper()
	l.Pages = l.Pages[:1]
	var file bytes.Buffer
	if err := pdf.Write(&file, l); err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "slip.pdf")
	if err := os.WriteFile(path, file.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	drawn, err := exec.Command("pdftoppm", "-r", fmt.Sprint(72*dotsToThePoint), "-l", "1", "-gray", "-png", path).Output()
	if err != nil {
		t.Fatal(err)
	}
	seen, err := png.Decode(bytes.NewReader(drawn))
	if err != nil {
		t.Fatal(err)
	}
	return asPage(seen, l, 0, 0, 1)
}

// asPage cuts the page out of a picture: the place of its corner in it, and its dots to one of the page.
func asPage(seen image.Image, l paper.Layout, left, top, scale float32) *image.Gray {
	size := func(length paper.Length) int { return int(length) * dotsToThePoint / paper.Point }
	page := image.NewGray(image.Rect(0, 0, size(l.Width), size(l.Pages[0].Bottom())))
	for y := range page.Rect.Dy() {
		for x := range page.Rect.Dx() {
			at := image.Pt(int(math.Round(float64(float32(x)/scale-left))), int(math.Round(float64(float32(y)/scale-top))))
			page.SetGray(x, y, color.Gray{255})
			if at.In(seen.Bounds()) {
				page.Set(x, y, seen.At(at.X, at.Y))
			}
		}
	}
	return page
}

// strayInk is the most stray ink of either picture in a field.
func strayInk(one, other *image.Gray) int {
	fields, worst := map[image.Point]int{}, 0
	for _, pair := range [][2]*image.Gray{{one, other}, {other, one}} {
		for y := range pair[0].Rect.Dy() {
			for x := range pair[0].Rect.Dx() {
				if pair[0].GrayAt(x, y).Y < inked && !hasInkNear(pair[1], x, y) {
					field := image.Pt(x/fieldOfPage, y/fieldOfPage)
					fields[field]++
					worst = max(worst, fields[field])
				}
			}
		}
	}
	return worst
}

// Ink is darker than one shade; near it whatever is not white counts, for the edge of a letter is
// spread over two dots.
const (
	inked = 110
	white = 200
)

func hasInkNear(page *image.Gray, x, y int) bool {
	for dy := -besides; dy <= besides; dy++ {
		for dx := -besides; dx <= besides; dx++ {
			if at := image.Pt(x+dx, y+dy); at.In(page.Rect) && page.GrayAt(at.X, at.Y).Y < white {
				return true
			}
		}
	}
	return false
}
