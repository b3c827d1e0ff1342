package load

// Step is the next thing a load on the yard waits for.
type Step int

// The steps in the order of the work. A sample is tested between the two weighings.
const (
	WeighFull Step = iota
	TestSample
	WeighEmpty
	SayWhose // the figures are there; grower, grain or truck are not
	Finish   // nothing is missing
)

// NextStep is the next thing the load waits for. Yard, board and bench count by it, so that they never
// disagree on how many samples wait.
func (l *Load) NextStep() Step {
	lacks := map[string]bool{}
	for _, m := range l.Missing() {
		lacks[m.Field] = true
	}
	switch {
	case lacks[string(Gross)]:
		return WeighFull
	case lacks["moisture"]:
		return TestSample
	case lacks[string(Tare)]:
		return WeighEmpty
	case len(lacks) > 0:
		return SayWhose
	}
	return Finish
}
