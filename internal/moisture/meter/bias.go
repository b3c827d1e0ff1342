package meter

import (
	"fmt"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/worksheet"
)

// Bias is a meter's mean error by its checks, and its uncertainty. It is only shown; nothing
// subtracts it from a reading.
type Bias struct {
	// N is the number of references it is based on.
	N int
	// Mean is the mean error, in points; above zero reads high.
	Mean *worksheet.Step
	// SD is the spread of single errors and SE the standard error of the mean;
	// both nil for one reference.
	SD, SE *worksheet.Step
	// Low and High hold the true bias 95 times in 100; nil for one reference.
	Low, High *worksheet.Step
	// Shown reports whether zero is outside Low to High: the bias is statistically significant.
	Shown bool
	// Sentence describes the bias for people.
	Sentence message.Text
}

// errorPlaces is the rounding of the spread and the standard error.
var errorPlaces = quantity.To("0.0001", quantity.HalfUp)

// widened rounds the half-width outward.
var widened = quantity.To("0.0001", quantity.Up)

// loneSD is the standard deviation of single meter errors over many meters and samples (Hurburgh
// 1985); it shows how little one reference can prove.
var loneSD = quantity.Of("0.39", quantity.Point)

// WorkBias calculates the bias on a sheet from the last so many checks; the checks are of one
// meter, under one calibration, oldest first, as [ChecksOf] returns them. With last 0 all of them
// count.
func WorkBias(s *worksheet.Sheet, checks []Check, last int) (Bias, error) {
	if last > 0 && len(checks) > last {
		checks = checks[len(checks)-last:]
	}
	if len(checks) == 0 {
		return Bias{}, message.NotFound.Errorf("there is no check to work a bias from; read a reference sample on the meter first")
	}
	for _, c := range checks {
		if first := checks[0]; c.Meter != first.Meter || c.Calibration != first.Calibration {
			return Bias{}, message.Invalid.Errorf("checks of meter %s, calibration %s, and of meter %s, calibration %s, do not make one bias", first.Meter, first.Calibration, c.Meter, c.Calibration)
		}
	}
	s.Section(message.Words("Meter errors"))
	each := writeErrors(s, checks)
	s.Section(message.Words("Bias"))
	b := Bias{N: len(each)}
	count := worksheet.Const(quantity.Int(int64(b.N), quantity.Plain))
	b.Mean = s.Work("bias.mean", message.Words("Mean error"), worksheet.Over(worksheet.Sum(each[0], each[1:]...), count), quantity.Unrounded, message.Words("reading less reference, mean"))
	if b.N == 1 {
		s.Skip("bias.se", message.Words("Standard error"), quantity.Point, errorPlaces, message.Words("one reference has no spread"), worksheet.Unsourced)
		b.Sentence = b.loneSentence(checks[0].Meter)
		return b, nil
	}
	b.interval(s, each, count)
	b.Sentence = b.sentence(checks[0].Meter)
	return b, nil
}

func writeErrors(s *worksheet.Sheet, checks []Check) []worksheet.Operand {
	out := make([]worksheet.Operand, len(checks))
	for i, c := range checks {
		id := fmt.Sprintf("check%d", i+1)
		label := message.List(", ", c.Day, c.Crop, message.Own(c.Name))
		reading := s.Given(id+".reading", message.New("Meter, %s", label), c.Reading, quantity.Unrounded, message.New("%v", c.By))
		reference := s.Given(id+".reference", message.New("Oven, %s", label), c.Reference, quantity.Unrounded, message.New("%v", c.By))
		out[i] = s.Work(id, message.New("Error %d", i+1), worksheet.Points(reading, reference), quantity.Unrounded, worksheet.Unsourced)
	}
	return out
}

// interval is mean ± t x SE, with the variance of the errors
// (Σe² - (Σe)²/n) / (n - 1) kept exact and each root rounded once.
func (b *Bias) interval(s *worksheet.Sheet, each []worksheet.Operand, count worksheet.Operand) {
	squares := make([]worksheet.Operand, len(each))
	for i, e := range each {
		squares[i] = worksheet.Times(e, e)
	}
	total := s.Work("bias.sum", message.Words("Sum of errors"), worksheet.Sum(each[0], each[1:]...), quantity.Unrounded, worksheet.Unsourced)
	sumOfSquares := s.Work("bias.squares", message.Words("Sum of squared errors"), worksheet.Sum(squares[0], squares[1:]...), quantity.Unrounded, worksheet.Unsourced)
	less := worksheet.Const(quantity.Int(int64(b.N-1), quantity.Plain))
	variance := s.Work("bias.variance", message.Words("Variance"),
		worksheet.Over(worksheet.Less(sumOfSquares, worksheet.Over(worksheet.Times(total, total), count)), less), quantity.Unrounded, message.Words("n - 1 in the divisor"))
	b.SD = s.Work("bias.sd", message.Words("Standard deviation of one error"), worksheet.Root(variance, errorPlaces), errorPlaces, worksheet.Unsourced)
	b.SE = s.Work("bias.se", message.Words("Standard error of the mean"), worksheet.Root(worksheet.Over(variance, count), errorPlaces), errorPlaces, worksheet.Unsourced)
	t := s.Rate("bias.t", message.Words("Student's t"), tQuantile(b.N-1), message.New("Student's t, 95 %% two-sided: NIST/SEMATECH e-Handbook 1.3.6.7.2, %d degrees of freedom", b.N-1))
	half := s.Work("bias.half", message.Words("To either side"), worksheet.Times(t, b.SE), widened, worksheet.Unsourced)
	b.Low = s.Work("bias.low", message.Words("Lowest likely bias"), worksheet.Less(b.Mean, half), quantity.Unrounded, worksheet.Unsourced)
	b.High = s.Work("bias.high", message.Words("Highest likely bias"), worksheet.Sum(b.Mean, half), quantity.Unrounded, worksheet.Unsourced)
	b.Shown = b.Low.Value().Sign() > 0 || b.High.Value().Sign() < 0
}

// twoPlaces shows points; the exact figures are on the sheet.
var twoPlaces = quantity.To("0.01", quantity.HalfUp)

func shownPoints(a quantity.Amount) string { return twoPlaces.Apply(a).FixedString(2) }

func (b *Bias) sentence(meter string) message.Text {
	text := message.New("Over %d references meter %s is off by %s on average; 95 times in 100 the true bias lies between %s and %s.",
		b.N, message.Own(meter), shownPoints(b.Mean.Value()), shownPoints(b.Low.Value()), shownPoints(b.High.Value()))
	if b.Shown {
		return message.List(" ", text, message.New("That is more than chance: have the meter adjusted. No reading is changed for it here."))
	}
	return message.List(" ", text, message.New("Zero lies between them: the references show no bias."))
}

func (b *Bias) loneSentence(meter string) message.Text {
	return message.New("One reference on meter %s is off by %s. Single errors spread by about %s (Hurburgh 1985), so one reference cannot show a bias; read ten.",
		message.Own(meter), shownPoints(b.Mean.Value()), loneSD)
}

// Student's t: how many standard errors to either side of a mean hold the truth
// 95 times in 100, by degrees of freedom. The values are those of the
// NIST/SEMATECH e-Handbook of Statistical Methods, section 1.3.6.7.2, column
// 0.975, written from memory; the test works every one of them out again from
// the distribution.
var t95 = []string{
	"12.706", "4.303", "3.182", "2.776", "2.571", "2.447", "2.365", "2.306", "2.262", "2.228",
	"2.201", "2.179", "2.160", "2.145", "2.131", "2.120", "2.110", "2.101", "2.093", "2.086",
	"2.080", "2.074", "2.069", "2.064", "2.060", "2.056", "2.052", "2.048", "2.045", "2.042",
}

const t95Source = "Student's t, 95 % two-sided: NIST/SEMATECH e-Handbook 1.3.6.7.2"

// tQuantile is t for so many degrees of freedom, from 1. Beyond the table it
// stays at the last row, which makes an interval a little too wide and never
// too narrow.
func tQuantile(degrees int) quantity.Amount {
	return quantity.Of(t95[min(degrees, len(t95))-1], quantity.Plain)
}
