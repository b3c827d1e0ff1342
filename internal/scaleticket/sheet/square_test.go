package sheet

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"math"
	"math/rand"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"tenthpoint/internal/paper"
	"tenthpoint/internal/scaleticket"
	"tenthpoint/internal/slipcode"
	"tenthpoint/internal/tickettest"

	"golang.org/x/image/draw"
	"golang.org/x/image/math/f64"
)

// signedSlip is a slip whose square is as full as squares are: all facts of shared grain, and a
// signature's worth of bytes.
func signedSlip(t *testing.T) (scaleticket.Document, string) {
	t.Helper()
	ticket := tickettest.Shares(t)
	d := scaleticket.Compose(ticket)
	q, _ := scaleticket.QR(d)
	return d, q.Text
}

// TestSquareOnPaper prints a slip, turns it by three degrees, blurs it and spoils two percent of it,
// as a hurried photo does, and lets another program read the square: the right text, or none.
func TestSquareOnPaper(t *testing.T) {
	doc, want := signedSlip(t)
	page := printed(t, doc)
	read := 0
	for seed := range int64(6) {
		random := rand.New(rand.NewSource(seed))
		got := scanned(t, spoiled(page, random))
		switch got {
		case want:
			read++
		case "":
		default:
			t.Errorf("photo %d is read as %q, the slip says %q", seed, got, want)
		}
	}
	if clean := scanned(t, page); clean != want {
		t.Errorf("the printed slip is read as %q, want %q", clean, want)
	}
	if read < 4 {
		t.Errorf("only %d of 6 photos were read", read)
	}
}

// dotsToTheInch is the coarsest printer that slips are printed on.
const dotsToTheInch = "203"

// printed is the first page of a slip in the dots of a printer.
func printed(t *testing.T, d scaleticket.Document) *image.Gray {
	t.Helper()
	folder := t.TempDir()
	var file bytes.Buffer
	if err := PDF(&file, d, HalfLetter, Options{}); err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(folder, "slip.pdf")
	if err := os.WriteFile(path, file.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command("pdftoppm", "-r", dotsToTheInch, "-l", "1", "-gray", "-png", "-singlefile", path, filepath.Join(folder, "slip")).CombinedOutput()
	if err != nil {
		t.Fatalf("pdftoppm: %v\n%s", err, out)
	}
	picture, err := os.Open(filepath.Join(folder, "slip.png"))
	if err != nil {
		t.Fatal(err)
	}
	defer picture.Close()
	img, err := png.Decode(picture)
	if err != nil {
		t.Fatal(err)
	}
	gray := image.NewGray(img.Bounds())
	draw.Draw(gray, gray.Rect, img, image.Point{}, draw.Src)
	return gray
}

// spoiled is a photo of a page: its lower right part, twice as large, turned, blurred and noisy.
func spoiled(page *image.Gray, random *rand.Rand) *image.Gray {
	b := page.Bounds()
	part := page.SubImage(image.Rect(b.Dx()/2, b.Dy()*3/5, b.Dx(), b.Dy())).(*image.Gray)
	out := image.NewGray(image.Rect(0, 0, 2*part.Bounds().Dx(), 2*part.Bounds().Dy()))
	draw.Draw(out, out.Rect, image.White, image.Point{}, draw.Src)
	sin, cos := math.Sincos(3 * math.Pi / 180)
	at := part.Bounds().Min
	x, y := float64(at.X), float64(at.Y)
	turn := f64.Aff3{2 * cos, -2 * sin, -2*cos*x + 2*sin*y + 20, 2 * sin, 2 * cos, -2*sin*x - 2*cos*y - 20}
	draw.BiLinear.Transform(out, turn, part, part.Bounds(), draw.Over, nil)
	out = blurred(out)
	for range len(out.Pix) * 2 / 100 {
		out.Pix[random.Intn(len(out.Pix))] = uint8(random.Intn(256))
	}
	return out
}

// blurred is the mean of every point and its neighbours.
func blurred(in *image.Gray) *image.Gray {
	out := image.NewGray(in.Rect)
	for y := range in.Rect.Dy() {
		for x := range in.Rect.Dx() {
			sum, n := 0, 0
			for dy := -1; dy <= 1; dy++ {
				for dx := -1; dx <= 1; dx++ {
					if p := image.Pt(x+dx, y+dy); p.In(in.Rect) {
						sum, n = sum+int(in.GrayAt(p.X, p.Y).Y), n+1
					}
				}
			}
			out.SetGray(x, y, color.Gray{Y: uint8(sum / n)})
		}
	}
	return out
}

// scanned is what zbarimg reads in a picture; empty where it reads nothing.
func scanned(t *testing.T, img *image.Gray) string {
	t.Helper()
	var file bytes.Buffer
	if err := png.Encode(&file, img); err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "photo.png")
	if err := os.WriteFile(path, file.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	const nothingFound = 4
	out, err := exec.Command("zbarimg", "--quiet", "--raw", "-Sdisable", "-Sqrcode.enable", path).Output()
	if exit, is := err.(*exec.ExitError); err != nil && (!is || exit.ExitCode() != nothingFound) {
		t.Fatalf("zbarimg: %v", err)
	}
	return strings.TrimSuffix(string(out), "\n")
}

// TestSquareKeepsItsSize sets slips of every length, some of them scaled down: a module stays three
// dots wide, nothing stands in the quiet zone, and the square with it takes about 27 mm at most.
func TestSquareKeepsItsSize(t *testing.T) {
	squares := 0
	for _, c := range tickettest.Table {
		d := scaleticket.Compose(c.Make(t))
		if q, ok := scaleticket.QR(d); !ok || q.Code == nil {
			continue
		}
		for _, size := range []Size{HalfLetter, A5} {
			for _, page := range Layout(d, size, Options{}).Pages {
				for _, p := range page.Pictures {
					squares++
					each := p.Width / paper.Length(p.Code.Columns)
					if each < module-3 || each > module+3 {
						t.Errorf("%s: a module is %d thousandths of a point wide, want %d", c.Name, each, module)
					}
					quiet := 4 * each
					zone := paper.Place{X: p.At.X - quiet, Y: p.At.Y - quiet}
					if far := p.Width + 2*quiet; far > 78*paper.Point {
						t.Errorf("%s: the square takes %d points", c.Name, far/paper.Point)
					}
					for _, run := range page.Runs {
						if run.At.X+run.Style.Width(run.Text) > zone.X && run.At.Y > zone.Y && run.At.Y-run.Style.Size*7/10 < p.At.Y+p.Height+quiet {
							t.Errorf("%s: %q stands in the quiet zone", c.Name, run.Text)
						}
					}
				}
			}
		}
	}
	if squares < 20 {
		t.Errorf("only %d squares were set", squares)
	}
	if slipcode.MostBytes > 250 {
		t.Errorf("a code may have %d bytes", slipcode.MostBytes)
	}
}
