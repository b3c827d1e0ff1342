// Package lab holds the commands of the sample bench: tests and their value, meters and their
// checks, charts, retained samples.
package lab

// Bench is the sample bench: everything between a needle on a dial and
// a moisture that money may be settled on.
type Bench struct {
	Convert  benchConvert  `cmd:"" help:"Turn a dial reading and a temperature into moisture; needs no book."`
	Oven     benchOven     `cmd:"" help:"Work out the moisture of an oven test; needs no book."`
	AirDry   benchAirDry   `cmd:"" help:"The moisture of a sample too wet for the meter, dried in the air; needs no book."`
	Cell     benchCell     `cmd:"" help:"What a meter's test cell stores, empty and full of water; needs no book."`
	Test     benchTest     `cmd:"" help:"Test the sample of a load: several readings, one moisture."`
	Dry      benchDry      `cmd:"" help:"Is it dry enough, for what, and what can be done?"`
	Worth    benchWorth    `cmd:"" help:"What a tenth of a point is worth for a load."`
	Samples  benchSamples  `cmd:"" help:"Number samples, list those due, discard them, print their labels."`
	Meter    benchMeter    `cmd:"" help:"Enter a moisture meter, or change one."`
	Meters   benchMeters   `cmd:"" help:"List the meters and how they stand with their checks."`
	Start    benchStart    `cmd:"" help:"Write down the check of a meter before the first test of a day."`
	Check    benchCheck    `cmd:"" help:"Write down a reference sample read on a meter."`
	Withdraw benchWithdraw `cmd:"" help:"Take a check of a meter back that was typed wrong."`
	Bias     benchBias     `cmd:"" help:"How far off a meter reads, and how sure that is."`
	Log      benchLog      `cmd:"" help:"A meter's check log as a paper."`
	Due      benchDue      `cmd:"" help:"What is due today: meters to check, samples to discard."`
	Charts   benchCharts   `cmd:"" help:"List, show and check moisture charts."`
	Setup    benchSetup    `cmd:"" help:"How the house tests: tests asked for, what stops a ticket, what is dry."`
}

func (Bench) Help() string {
	return `Tests are written down with the load, its meter and how that stood; what makes a figure doubtful is told and printed on the slip.

    tenth bench convert --commodity corn --dial 70 --at 65F --mass 250
    tenth bench test L12 --meter bench-1 --mass 250 --dial 70 --dial 70.5 --dial 70 --at 65F --room 68F
    tenth bench worth 1042
    tenth bench due`
}
