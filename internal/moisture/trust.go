package moisture

import (
	"slices"

	"tenthpoint/internal/fault"
	"tenthpoint/internal/message"
	"tenthpoint/internal/moisture/chart"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/quantity"
)

// Trust holds the limits a reading is checked against.
type Trust struct {
	// Cold is the sample temperature under which meters are unreliable.
	Cold quantity.Amount `json:"cold"`
	// Estimate is the moisture over which a meter only estimates.
	Estimate quantity.Amount `json:"estimate"`
	// MassWithin is the tolerance of the sample's mass, in g.
	MassWithin quantity.Amount `json:"mass_within"`
	// Blocks are the reasons that stop a ticket until a manager overrides them.
	Blocks []Code `json:"blocks"`
}

// DefaultTrust is 40 °F and 25 % (North Dakota State University extension, 2009
// and 2019) and half a gram (the average difference allowed on form FGIS-923 of
// the U.S. Department of Agriculture, 2025). A failed meter blocks.
func DefaultTrust() Trust {
	return Trust{
		Cold: quantity.Int(40, quantity.Fahrenheit), Estimate: quantity.Int(25, quantity.Percent),
		MassWithin: quantity.Of("0.5", quantity.Gram), Blocks: []Code{MeterFailed},
	}
}

// Check lists everything wrong with the settings.
func (t Trust) Check() []error {
	var faults fault.List
	faults.Unless(quantity.IsTemperature(t.Cold), "samples are called cold under %s; write a temperature, such as 40 °F", t.Cold)
	faults.Unless(meter.IsMoisture(t.Estimate), "a meter is said to only estimate above %s; write a moisture, such as 25 %%", t.Estimate)
	faults.Unless(t.MassWithin.Unit() == quantity.Gram && t.MassWithin.Sign() >= 0, "the balance may be off by %s; write grams, such as 0.5 g", t.MassWithin)
	for _, c := range t.Blocks {
		faults.Unless(slices.Contains(Codes(), c), "tickets are to be stopped for %q, which is no flag of a reading; the flags are %q", c, Codes())
	}
	return faults
}

// Flags returns the reasons to doubt one reading, whose moisture is m, in %, unrounded. Limits are
// compared with it as it would be recorded, to a tenth.
func (t Trust) Flags(r Reading, m quantity.Amount, e Equipment) []Flag {
	j := judge{trust: t, reading: r, moisture: m}
	j.meter, _ = e.Meter(r.Meter)
	if r.Method == meter.ByDial {
		j.chart, _ = e.Charts.ByID(r.Chart)
	}
	if r.Method.UsesMeter() {
		j.mass()
		j.temperatures()
		j.wet()
		j.posted()
		j.edition()
		j.meterStatus(e.Statuses[r.Meter])
	}
	j.kind()
	sortFlags(j.flags)
	return j.flags
}

// OfMeter returns the reasons to doubt every reading of a meter, by the status of its checks.
func (t Trust) OfMeter(m meter.Meter, s meter.Status) []Flag {
	j := judge{trust: t, meter: m}
	j.meterStatus(s)
	return j.flags
}

// judge goes through the reasons for one reading.
type judge struct {
	trust    Trust
	reading  Reading
	moisture quantity.Amount
	meter    meter.Meter
	chart    *chart.Chart // nil unless read by dial
	flags    []Flag
}

func (j *judge) raise(code Code, what, why, do message.Text) {
	test := j.reading.Seq
	if ofInstrument(code) {
		test = 0
	}
	j.flags = append(j.flags, Flag{Code: code, Test: test, What: what, Why: why, Do: do,
		Blocking: code == WrongMass || slices.Contains(j.trust.Blocks, code), Final: code == WrongMass})
}

// ofInstrument reports whether a warning is about the meter or its chart, and so about every test
// made with them.
func ofInstrument(code Code) bool {
	return code == MeterFailed || code == MeterOverdue || code == NeverChecked || code == InventedChart
}

// mass flags a wrong sample mass: a chart read with another mass of grain is meaningless, so nobody
// may override it.
func (j *judge) mass() {
	want := j.meter.For(j.reading.Crop).Mass
	if j.chart != nil {
		want = j.chart.Mass
	}
	got := j.reading.Mass
	if !quantity.Recorded(want) || !quantity.Recorded(got) || !apart(got, want).More(j.trust.MassWithin) {
		return
	}
	j.raise(WrongMass, message.New("%s of grain was in the meter and %s is asked for.", got, want),
		message.Words("The dial follows how much grain is in the cell, so the moisture shown is not this grain's."),
		message.New("Weigh out %s and test again.", want))
}

// apart is the distance between two figures.
func apart(a, b quantity.Amount) quantity.Amount { return quantity.Max(a.Sub(b), b.Sub(a)) }

func (j *judge) wet() {
	m := MoistureRounding.Apply(j.moisture)
	if !m.More(j.trust.Estimate) {
		return
	}
	j.raise(EstimateOnly, message.New("%s is above %s.", m.FixedString(1), j.trust.Estimate),
		message.Words("Meters only estimate grain this wet."), message.Words("Settle on an oven test, or agree on the figure with the grower."))
}

// posted compares a reading with the limits posted for this grain on the meter;
// a chart has its own edges and has refused already.
func (j *judge) posted() {
	limits := j.meter.For(j.reading.Crop)
	if m := MoistureRounding.Apply(j.moisture); !limits.Moisture.Contains(m) {
		j.raise(OutsidePosted, message.New("%s is outside the %s posted for this grain on meter %s.", m.FixedString(1), limits.Moisture, j.meter.ID),
			message.Words("The maker does not answer for the figure."), message.Words("Use the oven, or a meter posted for this moisture."))
	}
	if sample := j.reading.Sample; quantity.Recorded(sample) && !limits.Sample.ContainsTemperature(sample) {
		j.raise(OutsidePosted, message.New("The sample was at %s, outside the %s posted for this grain on meter %s.", sample, limits.Sample, j.meter.ID),
			message.Words("The maker does not answer for the figure."), message.Words("Bring the sample to that range in a closed jar and test again."))
	}
}

func (j *judge) edition() {
	if set := j.meter.Calibration; set != j.reading.Calibration {
		j.raise(OtherEdition, message.New("The test was read under calibration %q and meter %s is set to %q.", j.reading.Calibration, j.meter.ID, set),
			message.Words("Every calibration has its own figures."), message.Words("Test again under the calibration in force."))
	}
}

// meterStatus flags every slip with the meter's failed or missing checks until it is rechecked.
func (j *judge) meterStatus(s meter.Status) {
	code, flagged := map[meter.State]Code{meter.Failed: MeterFailed, meter.Overdue: MeterOverdue, meter.Never: NeverChecked, "": NeverChecked}[s.State]
	if !flagged {
		return
	}
	what := s.Sentence
	if what.IsZero() {
		what = message.New("Nothing is known of a check of meter %v.", j.meter.ID)
	}
	j.raise(code, what, message.Words("A meter may drift without anyone seeing it."), message.Words("Check it with an oven-dried reference before relying on it."))
}

// kind flags moistures typed by hand, and invented charts.
func (j *judge) kind() {
	if j.reading.Method == meter.Typed {
		j.raise(ByHand, message.New("The moisture was typed by hand: %v.", j.reading.Reason), message.Words("Nothing here can be worked through again."), message.Words("Keep the paper it is from with the ticket."))
	}
	if j.chart != nil && j.chart.Example {
		j.raise(InventedChart, message.New("Chart %s is an example - not for trade.", j.chart.ID), message.Words("Its cells are invented."), message.Words("Load the maker's chart for this meter."))
	}
}
