package moving

import (
	"slices"
	"strings"

	"tenthpoint/internal/bin"
	"tenthpoint/internal/bin/shape"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/entry/typed"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// field is one thing that is typed of a movement.
type field = typed.Reader[*reading]

// The ids of fields that others name.
const (
	fromID, intoID, weightID, lostID, screeningsID = "from", "into", "weight", "lost", "screenings"
)

var (
	from = typed.As(typed.Field{ID: fromID, Label: message.New("From bin"), Form: typed.OneBin, Required: true}, readBin(func(r *reading) *string { return &r.from }))
	into = typed.As(typed.Field{ID: intoID, Label: message.New("Into bin"), Form: typed.OneBin, Required: true}, readBin(func(r *reading) *string { return &r.into }))
	// about is the one bin of a movement that takes nothing out.
	about = from.Called(message.New("Bin"))

	weighed    = aWeight(weightID, message.New("Weight"), func(r *reading) *quantity.Amount { return &r.weight })
	orAll      = weighed.Hinted(message.New("without it, all that lies there"))
	lost       = aWeight(lostID, message.New("Weight lost"), func(r *reading) *quantity.Amount { return &r.lost })
	screenings = aWeight(screeningsID, message.New("Screenings"), func(r *reading) *quantity.Amount { return &r.m.Screenings }).Must()
	weightIn   = aWeight("weight-in", message.New("Weight in"), func(r *reading) *quantity.Amount { return &r.weight }).Must()
	weightOut  = aWeight("weight-out", message.New("Weight out"), func(r *reading) *quantity.Amount { return &r.out }).Must()
	counted    = aWeight("counted", message.New("What it really holds"), func(r *reading) *quantity.Amount { return &r.counted }).Must()

	parts = typed.As(typed.Field{
		ID: "parts", Label: message.New("Bins and weights"), Required: true,
		Hint: message.New("like B1=30000, B2=50000"),
	}, readParts)

	moistureIn  = aPercent("moisture-in", message.New("Moisture in"), func(r *reading) *quantity.Amount { return &r.drying().MoistureIn }).Must()
	moistureOut = aPercent("moisture-out", message.New("Moisture out"), func(r *reading) *quantity.Amount { return &r.drying().MoistureOut }).Must()
	driedWeight = aFigure("test-weight", message.New("Test weight"), func(r *reading) *quantity.Amount { return &r.drying().TestWeight }, quantity.LbPerBushel, quantity.KgPerHL)
	fuel        = aFigure("fuel", message.New("Fuel"), func(r *reading) *quantity.Amount { return &r.drying().Fuel }, quantity.Gallon, quantity.Litre, quantity.KWh)
	power       = aFigure("power", message.New("Power"), func(r *reading) *quantity.Amount { return &r.drying().Power }, quantity.KWh)
	ran         = aFigure("hours", message.New("Hours"), func(r *reading) *quantity.Amount { return &r.drying().Hours }, quantity.Hour)
	fansRan     = aFigure("hours", message.New("Hours"), func(r *reading) *quantity.Amount { return &r.m.Hours }, quantity.Hour).Must()

	depth      = aLength("depth", message.New("Depth at the wall"), func(r *reading) *quantity.Amount { return &r.measured().Depth })
	peak       = aLength("peak", message.New("Peak above it"), func(r *reading) *quantity.Amount { return &r.measured().Peak })
	testWeight = aFigure("test-weight", message.New("Test weight"), func(r *reading) *quantity.Amount { return &r.measured().TestWeight }, quantity.LbPerBushel, quantity.KgPerHL).Must()
	pack       = aFigure("pack", message.New("Pack"), func(r *reading) *quantity.Amount { return &r.measured().Pack }, quantity.Percent)
	peakGuess  = typed.As(typed.Field{ID: "peak-unknown", Label: message.New("Take the official peak"), Form: typed.Tick}, func(r *reading, text string) error { r.measured().PeakGuessed = text != ""; return nil })
	packTable  = typed.As(typed.Field{ID: "pack-table", Label: message.New("Table of the pack")}, func(r *reading, text string) error { r.measured().PackSource = text; return nil })
	post       = typed.As(typed.Field{ID: "post", Label: message.New("Post it: the book says what was measured"), Form: typed.Tick}, func(r *reading, text string) error { r.measured(); r.m.Count.Posted = text != ""; return nil })

	readings = typed.As(typed.Field{ID: "readings", Label: message.New("Temperatures from the floor up"), Required: true, Hint: message.New("like 52F 54F 61F")}, readTemperatures)
	adjusts  = typed.As(typed.Field{ID: "as", Label: message.New("What it is"), Form: typed.OneOf, Choices: adjustments()}, readAdjustment)

	commodity = typed.As(typed.Field{ID: "grain", Label: message.New("Grain"), Hint: message.New("where more than one lies in the bin")}, readGrain)
	onDay     = typed.As(typed.Field{ID: "day", Label: message.New("Day"), Form: typed.OneDate, Hint: message.New("without it, today")}, readDay)
	why       = typed.As(typed.Field{ID: "reason", Label: message.New("Reason or note")}, func(r *reading, text string) error { r.m.Reason = text; return nil })
)

// forms are the fields of each kind of movement; grain, day and reason follow in all of them.
var forms = map[bin.Kind][]field{
	bin.Transfer:     {from, into, orAll},
	bin.Blend:        {parts, into},
	bin.Turn:         {about, lost},
	bin.Clean:        {from, into, orAll, screenings},
	bin.Dry:          {from, into, weightIn, weightOut, moistureIn, moistureOut, driedWeight, fuel, power, ran},
	bin.Aerate:       {about, fansRan},
	bin.Temperatures: {about, readings},
	bin.MeasureUp:    {about, depth, peak, peakGuess, testWeight, pack, packTable, post},
	bin.WeighOver:    {about, counted},
	bin.WriteOff:     {from, weighed.Must(), adjusts},
}

// Fields are the fields of a kind of movement, in order; none for one that is not typed.
func Fields(kind bin.Kind) []typed.Field { return typed.FieldsOf(table(kind)) }

func table(kind bin.Kind) []field {
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
		if w.Weight, err = entry.ParseHeld("Weight", figure, r.house.Unit); err != nil {
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

func adjustments() []typed.Choice {
	var all []typed.Choice
	for _, a := range bin.Adjustments() {
		all = append(all, typed.Choice{Word: adjustmentWords[a], Says: message.Words(string(a))})
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
