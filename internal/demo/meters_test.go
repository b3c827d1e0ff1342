package demo

import "testing"

// Hurburgh (1985): single errors of meters on corn have a standard deviation of
// about 0.39. A demo whose references scatter by 0.04 teaches the wrong size.
func TestMeterErrorsScatterAsInNature(t *testing.T) {
	c := newChance(1, ofMeters)
	const draws = 20_000
	var sum, squares int64
	for range draws {
		e := meterError(c)
		sum, squares = sum+e, squares+e*e
		if e < -mostError || e > mostError {
			t.Fatalf("an error of %d hundredths: the meter fails its check, and no ticket is issued", e)
		}
	}
	if mean := sum / draws; mean < -2 || mean > 2 {
		t.Errorf("the mean error is %d hundredths, want about 0", mean)
	}
	if variance := squares / draws; variance < 37*37 || variance > 41*41 {
		t.Errorf("the variance is %d hundredths squared, want about 39 x 39 = 1521", variance)
	}
}
