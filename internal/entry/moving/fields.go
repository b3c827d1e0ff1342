package moving

import (
	"slices"
	"strings"

	"tenthpoint/internal/bin"
	"tenthpoint/internal/bin/shape"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Form says how a field is typed.
type Form int

const (
	Words   Form = iota
	OneBin       // the short name of a bin
	Figure       // a figure, with the unit in the field
	Tick         // yes when it has any text
	OneOf        // one of the choices
	OneDate      // a day
)

// Field is one thing that is typed of a movement.
type Field struct {
	ID       string
	Label    message.Text
	Form     Form
	Unit     quantity.Unit // the unit a figure has when it says none; plain for that of the scales
	Required bool
	Hint     message.Text
	Choices  []Choice

	read func(r *reading, text string) error
}

// Choice is one of the words of a field.
type Choice struct {
	Word string
	Says message.Text
}

// The ids of fields that others name.
const (
	fromID, intoID, weightID, lostID, screeningsID = "from", "into", "weight", "lost", "screenings"
)

// must is the field required.
func (f Field) must() Field { f.Required = true; return f }

// called is the field under another label.
func (f Field) called(label message.Text) Field { f.Label = label; return f }

// hinted is the field with a hint.
func (f Field) hinted(hint message.Text) Field { f.Hint = hint; return f }

var (
	from = Field{ID: fromID, Label: message.New("From bin"), Form: OneBin, Required: true, read: readBin(func(r *reading) *string { return &r.from })}
	into = Field{ID: intoID, Label: message.New("Into bin"), Form: OneBin, Required: true, read: readBin(func(r *reading) *string { return &r.into })}
	// about is the one bin of a movement that takes nothing out.
	about = from.called(message.New("Bin"))

	weighed    = aWeight(weightID, message.New("Weight"), func(r *reading) *quantity.Amount { return &r.weight })
	orAll      = weighed.hinted(message.New("without it, all that lies there"))
	lost       = aWeight(lostID, message.New("Weight lost"), func(r *reading) *quantity.Amount { return &r.lost })
	screenings = aWeight(screeningsID, message.New("Screenings"), func(r *reading) *quantity.Amount { return &r.m.Screenings }).must()
	weightIn   = aWeight("weight-in", message.New("Weight in"), func(r *reading) *quantity.Amount { return &r.weight }).must()
	weightOut  = aWeight("weight-out", message.New("Weight out"), func(r *reading) *quantity.Amount { return &r.out }).must()
	counted    = aWeight("counted", message.New("What it really holds"), func(r *reading) *quantity.Amount { return &r.counted }).must()

	parts = Field{
		ID: "parts", Label: message.New("Bins and weights"), Required: true, read: readParts,
		Hint: message.New("like B1=30000, B2=50000"),
	}

	moistureIn  = aPercent("moisture-in", message.New("Moisture in"), func(r *reading) *quantity.Amount { return &r.drying().MoistureIn }).must()
	moistureOut = aPercent("moisture-out", message.New("Moisture out"), func(r *reading) *quantity.Amount { return &r.drying().MoistureOut }).must()
	driedWeight = aFigure("test-weight", message.New("Test weight"), func(r *reading) *quantity.Amount { return &r.drying().TestWeight }, quantity.LbPerBushel, quantity.KgPerHL)
	fuel        = aFigure("fuel", message.New("Fuel"), func(r *reading) *quantity.Amount { return &r.drying().Fuel }, quantity.Gallon, quantity.Litre, quantity.KWh)
	power       = aFigure("power", message.New("Power"), func(r *reading) *quantity.Amount { return &r.drying().Power }, quantity.KWh)
	ran         = aFigure("hours", message.New("Hours"), func(r *reading) *quantity.Amount { return &r.drying().Hours }, quantity.Hour)
	fansRan     = aFigure("hours", message.New("Hours"), func(r *reading) *quantity.Amount { return &r.m.Hours }, quantity.Hour).must()

	depth      = aLength("depth", message.New("Depth at the wall"), func(r *reading) *quantity.Amount { return &r.measured().Depth })
	peak       = aLength("peak", message.New("Peak above it"), func(r *reading) *quantity.Amount { return &r.measured().Peak })
	testWeight = aFigure("test-weight", message.New("Test weight"), func(r *reading) *quantity.Amount { return &r.measured().TestWeight }, quantity.LbPerBushel, quantity.KgPerHL).must()
	pack       = aFigure("pack", message.New("Pack"), func(r *reading) *quantity.Amount { return &r.measured().Pack }, quantity.Percent)
	peakGuess  = Field{ID: "peak-unknown", Label: message.New("Take the official peak"), Form: Tick, read: func(r *reading, text string) error { r.measured().PeakGuessed = text != ""; return nil }}
	packTable  = Field{ID: "pack-table", Label: message.New("Table of the pack"), read: func(r *reading, text string) error { r.measured().PackSource = text; return nil }}
	post       = Field{ID: "post", Label: message.New("Post it: the book says what was measured"), Form: Tick, read: func(r *reading, text string) error { r.measured(); r.m.Count.Posted = text != ""; return nil }}

	readings = Field{ID: "readings", Label: message.New("Temperatures from the floor up"), Required: true, Hint: message.New("like 52F 54F 61F"), read: readTemperatures}
	adjusts  = Field{ID: "as", Label: message.New("What it is"), Form: OneOf, Choices: adjustments(), read: readAdjustment}

	commodity = Field{ID: "grain", Label: message.New("Grain"), Hint: message.New("where more than one lies in the bin"), read: readGrain}
	onDay     = Field{ID: "day", Label: message.New("Day"), Form: OneDate, Hint: message.New("without it, today"), read: readDay}
	why       = Field{ID: "reason", Label: message.New("Reason or note"), read: func(r *reading, text string) error { r.m.Reason = text; return nil }}
)

// forms are the fields of each kind of movement; grain, day and reason follow in all of them.
var forms = map[bin.Kind][]Field{
	bin.Transfer:     {from, into, orAll},
	bin.Blend:        {parts, into},
	bin.Turn:         {about, lost},
	bin.Clean:        {from, into, orAll, screenings},
	bin.Dry:          {from, into, weightIn, weightOut, moistureIn, moistureOut, driedWeight, fuel, power, ran},
	bin.Aerate:       {about, fansRan},
	bin.Temperatures: {about, readings},
	bin.MeasureUp:    {about, depth, peak, peakGuess, testWeight, pack, packTable, post},
	bin.WeighOver:    {about, counted},
	bin.WriteOff:     {from, weighed.must(), adjusts},
}

// Fields are what is typed of a kind of movement, in order; nothing for one that is not typed.
func Fields(kind bin.Kind) []Field {
	own, known := forms[kind]
	if !known {
		return nil
	}
	return append(slices.Clone(own), commodity, onDay, why)
}

// Kinds are the kinds of movement that are typed, in the order they are offered.
func Kinds() []bin.Kind {
	return slices.DeleteFunc(bin.Kinds(), func(k bin.Kind) bool { return forms[k] == nil })
}

func (r *reading) drying() *bin.Run {
	if r.m.Drying == nil {
		r.m.Drying = &bin.Run{}
	}
	return r.m.Drying
}

func (r *reading) measured() *shape.Measure {
	if r.m.Count == nil {
		r.m.Count = &bin.Count{Measure: &shape.Measure{}}
	}
	return r.m.Count.Measure
}

func readBin(at func(*reading) *string) func(*reading, string) error {
	return func(r *reading, text string) error {
		*at(r) = text
		if text == "" {
			return nil
		}
		for _, b := range r.house.Bins {
			if strings.EqualFold(b.ID, text) {
				*at(r) = b.ID
				return nil
			}
		}
		return message.NotFound.Errorf("there is no pit or bin %v at this elevator", text)
	}
}

func readParts(r *reading, text string) error {
	for _, part := range strings.FieldsFunc(text, func(c rune) bool { return c == ';' || c == ' ' }) {
		name, figure, ok := strings.Cut(strings.TrimSuffix(part, ","), "=")
		if !ok {
			return message.Invalid.Errorf("%q is not a bin and a weight: write it like B1=30000", part)
		}
		w := bin.Weighed{}
		if err := readBin(func(*reading) *string { return &w.Bin })(r, name); err != nil {
			return err
		}
		var err error
		if w.Weight, err = entry.ParseWeight("Weight", figure, r.house.Unit); err != nil {
			return err
		}
		r.parts = append(r.parts, w)
	}
	return nil
}

func readDay(r *reading, text string) (err error) {
	r.m.Day, err = entry.ParseDay("Day", text, r.house.Today)
	return err
}

func readTemperatures(r *reading, text string) error {
	for _, one := range strings.Fields(text) {
		t, err := entry.Temperature("Temperature", one, quantity.Plain)
		if err != nil {
			return err
		}
		if !quantity.IsTemperature(t) {
			return message.Invalid.Errorf("%q has no scale: write it with F or C, like 52F", one)
		}
		r.m.Readings = append(r.m.Readings, t)
	}
	return nil
}

// adjustmentWords are the words typed for the four kinds of adjustment.
var adjustmentWords = map[bin.Adjustment]string{
	bin.ShrinkRecalculation: "shrink", bin.ErrorCorrection: "error", bin.AccountantsCount: "count", bin.WeighedInventory: "weighed",
}

func adjustments() []Choice {
	var all []Choice
	for _, a := range bin.Adjustments() {
		all = append(all, Choice{adjustmentWords[a], message.Words(string(a))})
	}
	return all
}

func readAdjustment(r *reading, text string) error {
	for a, word := range adjustmentWords {
		if word == text {
			r.m.Adjusts = a
			return nil
		}
	}
	if text != "" {
		return message.Invalid.Errorf("%q is no kind of adjustment: shrink, error, count or weighed", text)
	}
	return nil
}
