package barcode

import (
	"fmt"
	"math/rand"
	"testing"

	"github.com/boombuler/barcode/qr"
)

const qrLetters = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:"

// TestSquareAsAnotherEncoder draws codes of every length a slip has with another library, which tries
// all masks too: every module is the same.
func TestSquareAsAnotherEncoder(t *testing.T) {
	random := rand.New(rand.NewSource(11))
	for length := 1; length < 400; length += 6 {
		text := make([]byte, length)
		for i := range text {
			text[i] = qrLetters[random.Intn(len(qrLetters))]
		}
		got, err := Square(string(text))
		if err != nil {
			t.Fatal(err)
		}
		want, err := qr.Encode(string(text), qr.M, qr.AlphaNumeric)
		if err != nil {
			t.Fatal(err)
		}
		if got.Bounds() != want.Bounds() {
			t.Fatalf("%d letters: %v modules, by the other library %v", length, got.Bounds(), want.Bounds())
		}
		other := 0
		for y := range got.Bounds().Dy() {
			for x := range got.Bounds().Dx() {
				if isDark(got, x, y) != isDark(want, x, y) {
					other++
				}
			}
		}
		if other > 0 {
			t.Errorf("%d letters: %d modules of another colour", length, other)
		}
	}
}

func TestSquareRefused(t *testing.T) {
	for _, text := range []string{"lower case", fmt.Sprintf("%04000d", 1), "A\x00"} {
		if _, err := Square(text); err == nil {
			t.Errorf("%.20q is drawn", text)
		}
	}
}

func BenchmarkSquare(b *testing.B) {
	text := fmt.Sprintf("%0360d", 7)
	for b.Loop() {
		if _, err := Square(text); err != nil {
			b.Fatal(err)
		}
	}
}
