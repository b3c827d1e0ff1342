package demo

import (
	"context"
	"image"
	"image/color"
	"image/draw"
	"os"
	"strconv"
	"strings"
	"testing"

	"tenthpoint/internal/book"
	"tenthpoint/internal/checker"
	"tenthpoint/internal/checker/square"
	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/internal/office/posting"
	"tenthpoint/internal/scaleticket"
	"tenthpoint/internal/scaleticket/barcode"
)

// TestSquaresOfASeason prints the square of every ticket of a season, reads it from its picture and
// settles it as the page for growers does: figure for figure what the slip says. SQUARES is how many
// loads the season has, for more than fit a check.
func TestSquaresOfASeason(t *testing.T) {
	loads, err := strconv.Atoi(os.Getenv("SQUARES"))
	if err != nil {
		loads = 60
	}
	ctx := context.Background()
	d := opened(t, filled(t, Options{Loads: loads, Seed: 18, Now: noon, Rates: shipped(t)}))
	house, err := posting.House(ctx, d)
	must(t, err)
	page, err := checker.New(house)
	must(t, err)
	rows, err := d.Reader().Loads(ctx, book.LoadFilter{FromTicket: 1})
	must(t, err)
	checked, unread := 0, 0
	for _, r := range rows {
		l, err := office.Load(ctx, d, r.ID)
		must(t, err)
		if l.Details.Direction == load.Outbound {
			continue
		}
		checked++
		s, err := office.Resettle(ctx, d, l)
		must(t, err)
		code, err := office.Code(ctx, d, l)
		must(t, err)
		q, _ := scaleticket.QR(scaleticket.Compose(scaleticket.Ticket{House: d.Profile(), Load: l, Settlement: s, Code: code}))
		text := photographed(t, q.Text)
		if text == "" {
			unread++
			text = q.Text
		}
		if told := page.Check("en", text); text != q.Text || !strings.Contains(told, "Every line is the same") {
			t.Errorf("ticket %d, %q: %.600s", l.Number, text, told)
		}
	}
	if checked < loads/2 || unread > checked/20 {
		t.Errorf("%d tickets were checked, %d squares of them could not be read", checked, unread)
	}
}

// photographed is what is read in a picture of a square.
func photographed(t *testing.T, text string) string {
	t.Helper()
	code, err := barcode.Square(text)
	must(t, err)
	const each, quiet = 5, 30
	side := code.Bounds().Dx()*each + 2*quiet
	img := image.NewRGBA(image.Rect(0, 0, side, side))
	draw.Draw(img, img.Rect, image.NewUniform(color.Gray{Y: 235}), image.Point{}, draw.Src)
	for y := range code.Bounds().Dy() * each {
		for x := range code.Bounds().Dx() * each {
			img.Set(quiet+x, quiet+y, code.At(x/each, y/each))
		}
	}
	return square.Read(img.Pix, side, side)
}
