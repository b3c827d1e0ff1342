package meter

import (
	"math"
	"strconv"
	"testing"
)

// within is the share of Student's distribution within t of nought, by the
// finite sums for whole degrees of freedom (Abramowitz and Stegun 26.7.3 and
// 26.7.4). Floating point is good enough for a table of three decimals.
func within(t float64, degrees int) float64 {
	n := float64(degrees)
	theta := math.Atan(t / math.Sqrt(n))
	sin, cos := math.Sin(theta), math.Cos(theta)
	if degrees%2 == 0 {
		sum, term := 0.0, 1.0
		for k := 0; k <= degrees-2; k += 2 {
			sum += term
			term *= cos * cos * float64(k+1) / float64(k+2)
		}
		return sin * sum
	}
	sum, term := 0.0, cos
	for k := 1; k <= degrees-2; k += 2 {
		sum += term
		term *= cos * cos * float64(k+1) / float64(k+2)
	}
	return 2 / math.Pi * (theta + sin*sum)
}

// Every printed t holds 95 % to its last place: half a unit less holds less,
// half a unit more holds more.
func TestStudentsTableIsWorkedOutAgain(t *testing.T) {
	if len(t95) != 30 {
		t.Fatalf("%d rows", len(t95))
	}
	for i, text := range t95 {
		value, err := strconv.ParseFloat(text, 64)
		if err != nil {
			t.Fatal(err)
		}
		low, high := within(value-0.0005, i+1), within(value+0.0005, i+1)
		if low > 0.95 || high < 0.95 {
			t.Errorf("t for %d degrees of freedom is printed %s; from %.6f to %.6f lies within it", i+1, text, low, high)
		}
	}
}

// The oracle itself: half of the distribution with one degree of freedom lies
// within 1 (Cauchy), and with two within the root of 2/3.
func TestStudentOracle(t *testing.T) {
	if got := within(1, 1); math.Abs(got-0.5) > 1e-12 {
		t.Errorf("one degree: %v", got)
	}
	if got := within(math.Sqrt(2.0/3), 2); math.Abs(got-0.5) > 1e-12 {
		t.Errorf("two degrees: %v", got)
	}
}

func TestStudentBeyondTheTableStaysWide(t *testing.T) {
	for degrees, want := range map[int]string{1: "12.706", 4: "2.776", 30: "2.042", 31: "2.042", 500: "2.042"} {
		if got := tQuantile(degrees).String(); got != want {
			t.Errorf("t for %d is %s, want %s", degrees, got, want)
		}
	}
}
