package settle

import (
	"slices"
	"strings"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Recorded are the lines recorded with a settled load, and what is needed to read them: the engine,
// for each has its own lines, and whether the load was only weighed.
type Recorded struct {
	Engine  Engine
	Weighed bool
	Lines   map[string]quantity.Amount // by the ids of their steps
}

// Summary is a settled load in named figures, read from its recorded lines. A ticket of any engine
// gives the same figures.
type Summary struct {
	// Weighed marks a load that was only weighed. It has a net weight and
	// perhaps bushels; everything else is zero.
	Weighed bool
	Part    // of the whole load
	// ScaleNet is the net weight in the unit of the scale; Net is in the unit that
	// is settled in.
	ScaleNet quantity.Amount

	// Dockage, Water, Handling and Quality make up the difference between net and settled weight,
	// in its unit. Water is negative where over-dry grain is credited; Quality, discounts taken in
	// weight less premiums paid in it, where the premiums are more. Grain without a rule for
	// dockage has none.
	Dockage, Water, Handling, Quality quantity.Amount

	Moisture *quantity.Amount // %, as recorded; nil where only weighed
	// TestWeight is in lb/bu or in kg/hL; nil where it was not tested.
	TestWeight *quantity.Amount

	// Owners are the parts of those who share in the load, in the order of the
	// ticket; none where one has all of it.
	Owners []Part
}

// Part is the figures of the whole load or of one owner: the lines that are parted among
// owners. Charges are Drying + Discounts − Premiums, Payable is Value − Charges,
// and Value and Payable are zero without a price. Of a load whose owners have deals
// of their own Value and Payable are of the priced parts alone, and Price is theirs
// where they have one price.
type Part struct {
	Net, Settled quantity.Amount // lb or kg
	Quantity     quantity.Amount // bu, cwt or t
	// Bushels are dry-equivalent bushels where something else is settled; nil where there are none.
	Bushels *quantity.Amount

	Drying, Discounts, Premiums, Charges, Value, Payable quantity.Amount // $
	// Services are the charges for services alone, NetValue the value after discounts
	// and premiums.
	Services, NetValue quantity.Amount
	// Price is the price of this part: $/bu, $/cwt or $/t; nil without a price.
	Price *quantity.Amount
}

// Clean is the net weight less dockage.
func (s Summary) Clean() quantity.Amount { return s.Net.Sub(s.Dockage) }

// TakenOff is everything between the net and the settled weight.
func (p Part) TakenOff() quantity.Amount { return p.Net.Sub(p.Settled) }

// DryQuantity returns dry-equivalent bushels, or else the quantity settled; false for a load that
// was weighed and not counted in bushels.
func (s Summary) DryQuantity() (quantity.Amount, bool) {
	if s.Bushels != nil {
		return *s.Bushels, true
	}
	return s.Quantity, !s.Weighed
}

// Priced reports whether the load, or a part of it, has its price.
func (s Summary) Priced() bool {
	return s.Price != nil || slices.ContainsFunc(s.Owners, func(p Part) bool { return p.Price != nil })
}

// Unpriced is the quantity without a price, and what that is charged; there is
// none where every part has its price.
func (s Summary) Unpriced() (q, charges quantity.Amount, some bool) {
	if !s.Priced() {
		return s.Quantity, s.Charges, !s.Weighed
	}
	q, charges = quantity.Zero(s.Quantity.Unit()), quantity.Zero(quantity.Dollar)
	for _, p := range s.Owners {
		if p.Price == nil {
			q, charges, some = q.Add(p.Quantity), charges.Add(p.Charges), true
		}
	}
	return q, charges, some
}

// Of returns the summary of one owner's part, counted from 1. The deductions of the whole load are
// not split line by line and are zero in it. It fails for an owner without lines.
func (s Summary) Of(owner int) (Summary, error) {
	if owner < 1 || owner > len(s.Owners) {
		return s, message.Errorf("the settlement has no lines of owner %d", owner)
	}
	none := quantity.Zero(s.Net.Unit())
	s.Part, s.Owners = s.Owners[owner-1], nil
	s.Dockage, s.Water, s.Handling, s.Quality = none, none, none, none
	return s, nil
}

// Summary are the settlement's figures by name.
func (s *Settlement) Summary() (Summary, error) {
	return Recorded{Engine: s.Engine, Weighed: s.Edition == nil, Lines: s.Figures()}.Summary()
}

// Summary reads the figures by name. The error names every line that should be
// there and is not: a figure that is missing is never taken for zero.
func (r Recorded) Summary() (Summary, error) {
	if err := r.Engine.Known(); err != nil {
		return Summary{}, err
	}
	l := &lineReader{lines: r.Lines}
	s := Summary{Weighed: r.Weighed, ScaleNet: l.weight(LineNet, quantity.Plain)}
	if r.Weighed {
		s.weighed(l)
	} else {
		s.read(l, engines[r.Engine.Number()])
	}
	return s, l.err()
}

// Moves returns the weight a ticket adds to the stock, as the position counts it: the settled
// weight, or the negative net of a load that left.
func (r Recorded) Moves() (quantity.Amount, error) {
	l := &lineReader{lines: r.Lines}
	if r.Weighed {
		net := l.net()
		return net.Neg(), l.err()
	}
	settled := l.weight(LineSettled, quantity.Plain)
	return settled, l.err()
}

func (s *Summary) weighed(l *lineReader) {
	none := quantity.Zero(quantity.Dollar)
	s.Net = l.net()
	weight := quantity.Zero(s.Net.Unit())
	s.Part = Part{
		Net: s.Net, Settled: weight, Quantity: quantity.Zero(quantity.Bushel), Bushels: l.optional(LineBushels),
		Drying: none, Discounts: none, Premiums: none, Charges: none, Value: none, Payable: none, Services: none, NetValue: none,
	}
	s.Dockage, s.Water, s.Handling, s.Quality = weight, weight, weight, weight
}

func (s *Summary) read(l *lineReader, by *engine) {
	s.Part = l.part(by)
	unit := s.Net.Unit()
	s.Dockage = l.dockage(unit)
	s.Water, s.Handling = l.weight(LineWater, unit), l.weight(LineHandling, unit)
	s.Quality = by.quality(l, s)
	moisture := l.in(LineMoisture, quantity.Percent)
	s.Moisture = &moisture
	s.TestWeight = l.optional(FactorLine(grain.TestWeight))
	for owner, all := 1, l.owners(); owner <= all; owner++ {
		own := &lineReader{lines: l.lines, owner: owner}
		s.Owners = append(s.Owners, own.part(by))
		l.faults = append(l.faults, own.faults...)
	}
	s.readPrices()
}

// readPrices gives owners without a price of their own that of the load, and a
// load whose owners have theirs the one price of its priced parts, if it is one.
func (s *Summary) readPrices() {
	if s.Price != nil {
		for i := range s.Owners {
			s.Owners[i].Price = s.Price
		}
		return
	}
	for _, p := range s.Owners {
		switch {
		case p.Price == nil:
		case s.Price == nil:
			s.Price = p.Price
		case !s.Price.Equal(*p.Price):
			s.Price = nil
			return
		}
	}
}

// part reads the lines that are split among owners.
func (l *lineReader) part(by *engine) Part {
	p := Part{Net: l.net(), Settled: l.weight(LineSettled, quantity.Plain), Quantity: l.quantity(), Bushels: l.optional(LineBushels)}
	p.Drying = l.in(LineDrying, quantity.Dollar)
	p.Value, p.Payable = l.in(LineValue, quantity.Dollar), l.in(LinePayable, quantity.Dollar)
	by.charged(l, &p)
	p.Discounts, p.Premiums = by.adjusted(l, p)
	p.Price = l.optional(LinePrice)
	return p
}

// lineReader reads the lines of a whole load, or of one owner, and collects errors.
type lineReader struct {
	lines  map[string]quantity.Amount
	owner  int // counted from 1; zero reads the whole load's
	faults []message.Text
}

func (l *lineReader) err() error {
	if len(l.faults) == 0 {
		return nil
	}
	return message.Storage.Errorf("the figures written down with the load cannot be read: %s", message.Texts(", ", l.faults))
}

func (l *lineReader) id(line string) string {
	if l.owner > 0 {
		return OwnLine(l.owner, line)
	}
	return line
}

func (l *lineReader) has(line string) bool {
	_, ok := l.lines[l.id(line)]
	return ok
}

// optional is a line that not every load has.
func (l *lineReader) optional(line string) *quantity.Amount {
	if a, ok := l.lines[l.id(line)]; ok {
		return &a
	}
	return nil
}

// any returns a line in any unit.
func (l *lineReader) any(line string) quantity.Amount {
	a, ok := l.lines[l.id(line)]
	if !ok {
		l.faults = append(l.faults, message.New("there is no line %q", l.id(line)))
	}
	return a
}

// in is a line in a unit.
func (l *lineReader) in(line string, unit quantity.Unit) quantity.Amount {
	if !l.has(line) {
		l.any(line)
		return quantity.Zero(unit)
	}
	a := l.any(line)
	if a.Unit() != unit {
		l.faults = append(l.faults, message.New("the line %q is %s and should be in %s", l.id(line), a, unit))
		return quantity.Zero(unit)
	}
	return a
}

// weight is a line in a unit of weight, or in any where the unit is plain.
func (l *lineReader) weight(line string, unit quantity.Unit) quantity.Amount {
	if unit == quantity.Plain {
		if a, ok := l.lines[l.id(line)]; ok && a.Unit().IsMass() {
			return a
		}
		unit = quantity.Lb
	}
	return l.in(line, unit)
}

// net is the net weight in the unit the load is settled in.
func (l *lineReader) net() quantity.Amount {
	if l.has(LineConvertedNet) {
		return l.weight(LineConvertedNet, quantity.Plain)
	}
	return l.weight(LineNet, quantity.Plain)
}

// quantity returns the quantity settled for, in a unit grain is settled by.
func (l *lineReader) quantity() quantity.Amount {
	a := l.any(LineQuantity)
	if _, known := settledAmounts[a.Unit()]; l.has(LineQuantity) && !known {
		return l.in(LineQuantity, quantity.Bushel)
	}
	return a
}

// dockage is zero for grain that has no rule for it. A load with a clean weight
// of its own had some.
func (l *lineReader) dockage(unit quantity.Unit) quantity.Amount {
	if l.has(LineDockage) || l.has(LineClean) {
		return l.in(LineDockage, unit)
	}
	return quantity.Zero(unit)
}

// owners returns the number of owners with lines. It cannot exceed the number of lines, whatever
// the ids in a damaged book.
func (l *lineReader) owners() int {
	most := 0
	for id := range l.lines {
		if owner, own := OwnerOf(id); own {
			most = max(most, owner)
		}
	}
	return min(most, len(l.lines))
}

var half = quantity.Of("0.5", quantity.Plain)

// solvedAdjusted are the discounts and premiums in money of the first engine. It records the size
// of each and, in the charges, their difference; sum and difference give both.
func solvedAdjusted(l *lineReader, p Part) (discounts, premiums quantity.Amount) {
	sum := quantity.Zero(quantity.Dollar)
	for id, a := range l.lines {
		if strings.HasPrefix(id, l.id(discountLines)+".") && a.Unit() == quantity.Dollar {
			sum = sum.Add(a)
		}
	}
	difference := p.Charges.Sub(p.Drying)
	return sum.Add(difference).Mul(half), sum.Sub(difference).Mul(half)
}

// solvedQuality derives the weight taken by discounts in the first engine: the difference between
// net and settled weight less its other lines.
func solvedQuality(_ *lineReader, s *Summary) quantity.Amount {
	return s.Net.Sub(s.Dockage).Sub(s.Water).Sub(s.Handling).Sub(s.Settled)
}

// readAdjusted and readQuality read the totals that later engines have.
func readAdjusted(l *lineReader, _ Part) (discounts, premiums quantity.Amount) {
	return l.in(LineDiscounts, quantity.Dollar), l.in(LinePremiums, quantity.Dollar)
}

// readCharges reads the one line of the first two engines, whose only service was
// drying; readServed reads what later ones keep apart.
func readCharges(l *lineReader, p *Part) {
	p.Charges, p.Services, p.NetValue = l.in(LineCharges, quantity.Dollar), p.Drying, quantity.Zero(quantity.Dollar)
	if _, priced := l.lines[LinePrice]; priced {
		p.NetValue = p.Payable.Add(p.Services)
	}
}

func readServed(l *lineReader, p *Part) {
	p.Charges, p.Services, p.NetValue = l.in(LineAdjustments, quantity.Dollar).Neg(), l.in(LineServices, quantity.Dollar), l.in(LineNetValue, quantity.Dollar)
}

func readQuality(l *lineReader, s *Summary) quantity.Amount {
	return l.weight(LineQuality, s.Net.Unit())
}
