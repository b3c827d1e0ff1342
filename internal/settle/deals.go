package settle

import (
	"slices"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates/discount"
	"tenthpoint/internal/rates/rule"
	"tenthpoint/internal/title"
	"tenthpoint/internal/worksheet"
)

// The third engine settles each owner's part under that owner's own deal: a tenant
// sells and the landlord stores. What services cost stands apart from what is taken
// and paid for quality; the value after the latter is what levies are a part of.
// Where all owners have the deal of the load the load is settled whole and parted,
// as by the engines before it; where they have not, each part is settled and the
// load is their sum.

// apart reports whether an owner has a deal of his own.
func (d *calculation) apart() bool {
	return len(d.facts.Shares) > 1 && slices.ContainsFunc(d.facts.Shares, func(s Share) bool { return s.Own != nil })
}

func (d *calculation) dealOf(owner int) Deal {
	if own := d.facts.Shares[owner].Own; own != nil {
		return *own
	}
	return d.facts.Deal
}

// workMoneyServed adds up services, discounts and premiums and, where there is a
// price, what is payable.
func workMoneyServed(d *calculation) {
	if d.apart() {
		workMoneyApart(d)
		return
	}
	d.sheet.Section(message.Words("Money"))
	d.out.Discounts, d.out.Premiums = adjust(d, holder{}, deductionSteps(d))
	d.out.Services, d.out.Adjustments = d.serve(holder{}, d.out.Drying, d.out.Discounts, d.out.Premiums)
	if d.facts.Price == nil {
		d.out.Value, d.out.NetValue, d.out.Payable = d.unpaid(holder{}, d.facts.Deal)
		return
	}
	d.out.Value = d.sheet.Work(LineValue, message.Words("Value"), worksheet.Times(d.price(), d.out.Quantity), d.places().Money, worksheet.Unsourced)
	d.out.NetValue, d.out.Payable = d.paid(holder{}, d.out.Value, d.out.Discounts, d.out.Premiums, d.out.Services)
	d.worthCharges()
}

// serve adds up services, and them with discounts and premiums.
func (d *calculation) serve(of holder, drying, discounts, premiums *worksheet.Step) (services, adjustments *worksheet.Step) {
	services = d.sheet.Work(of.id(LineServices), of.label(message.Words("Charges")), worksheet.Same(drying), quantity.Unrounded, worksheet.Unsourced)
	all := worksheet.Less(premiums, discounts, services)
	return services, d.sheet.Work(of.id(LineAdjustments), of.label(message.Words("Premiums less discounts and charges")), all, quantity.Unrounded, worksheet.Unsourced)
}

// worthCharges refuses a load that is worth less than it is charged.
func (d *calculation) worthCharges() {
	if d.out.Payable.Value().Sign() >= 0 {
		return
	}
	charged := d.out.Value.Value().Sub(d.out.Payable.Value())
	d.refuse(Problem{Field: "edition", Sentence: message.New("The charges, %s, are more than the load is worth, %s. Check the price, the sample and edition %s.", charged, d.out.Value.Value(), d.edition.ID)})
}

// unpaid are the lines of grain without a price, with what stands in their place.
func (d *calculation) unpaid(of holder, deal Deal) (value, net, payable *worksheet.Step) {
	skip := func(line string, label message.Text) *worksheet.Step {
		return d.sheet.Skip(of.id(line), of.label(label), quantity.Dollar, d.places().Money, deal.unpriced(), worksheet.Unsourced)
	}
	return skip(LineValue, message.Words("Value")), skip(LineNetValue, message.Words("Value after discounts")), skip(LinePayable, message.Words("Payable"))
}

// paid takes discounts and services off a value and adds premiums.
func (d *calculation) paid(of holder, value, discounts, premiums, services *worksheet.Step) (net, payable *worksheet.Step) {
	var quality worksheet.Operand = worksheet.Same(value)
	switch {
	case premiums.Kind() == worksheet.NotApplied && discounts.Kind() == worksheet.NotApplied:
	case premiums.Kind() == worksheet.NotApplied:
		quality = worksheet.Less(value, discounts)
	case discounts.Kind() == worksheet.NotApplied:
		quality = worksheet.Sum(value, premiums)
	default:
		quality = worksheet.Less(worksheet.Sum(value, premiums), discounts)
	}
	net = d.sheet.Work(of.id(LineNetValue), of.label(message.Words("Value after discounts")), quality, quantity.Unrounded, worksheet.Unsourced)
	return net, d.sheet.Work(of.id(LinePayable), of.label(message.Words("Payable")), worksheet.Less(net, services), quantity.Unrounded, worksheet.Unsourced)
}

// workMoneyApart settles the parts first and adds them up.
func workMoneyApart(d *calculation) {
	d.sheet.Section(message.Words("Shares"))
	lines := partWeights(d)
	for i := range lines {
		if price := d.ownPrice(i); price != nil {
			lines[i].Value = d.sheet.Work(OwnLine(i+1, LineValue), d.holderOf(i).label(message.Words("Value")), worksheet.Times(price, lines[i].Quantity), d.places().Money, worksheet.Unsourced)
		}
		addOwnerServed(d, i, &lines[i])
	}
	d.out.Shares = lines
	d.sheet.Section(message.Words("Money"))
	d.out.Discounts, d.out.Premiums = adjust(d, holder{}, deductionSteps(d))
	d.out.Services, d.out.Adjustments = d.serve(holder{}, d.out.Drying, d.out.Discounts, d.out.Premiums)
	sum := func(id string, label message.Text, of func(ShareLine) *worksheet.Step) *worksheet.Step {
		return d.sum(id, label, lines, of)
	}
	d.out.Value = sum(LineValue, message.Words("Value"), func(l ShareLine) *worksheet.Step { return l.Value })
	d.out.NetValue = sum(LineNetValue, message.Words("Value after discounts"), func(l ShareLine) *worksheet.Step { return l.NetValue })
	d.out.Payable = sum(LinePayable, message.Words("Payable"), func(l ShareLine) *worksheet.Step { return l.Payable })
	d.worthCharges()
}

// sum adds up a line of the owners who have a price.
func (d *calculation) sum(id string, label message.Text, lines []ShareLine, of func(ShareLine) *worksheet.Step) *worksheet.Step {
	var priced []worksheet.Operand
	for i, line := range lines {
		if d.dealOf(i).Price != nil {
			priced = append(priced, of(line))
		}
	}
	if len(priced) == 0 {
		return d.sheet.Skip(id, label, quantity.Dollar, d.places().Money, message.Words("no owner has a price"), worksheet.Unsourced)
	}
	return d.sheet.Work(id, label, worksheet.Sum(priced[0], priced[1:]...), quantity.Unrounded, worksheet.Unsourced)
}

// ownPrice is an owner's price as a step, written down where it is first needed;
// nil where there is none.
func (d *calculation) ownPrice(owner int) *worksheet.Step {
	if known, written := d.prices[owner]; written {
		return known
	}
	price := d.dealOf(owner).Price
	if price == nil {
		return nil
	}
	if d.prices == nil {
		d.prices = map[int]*worksheet.Step{}
	}
	d.prices[owner] = d.sheet.Given(OwnLine(owner+1, LinePrice), d.holderOf(owner).label(message.Words("Price")), price.Amount, quantity.Unrounded, price.Source)
	return d.prices[owner]
}

// shareOutServed parts a load whose owners have one deal; the others are parted
// already.
func shareOutServed(d *calculation) {
	if d.out.Shares == nil {
		shareOut(d)
	}
}

// AwaitsPrice reports whether a line has no figure because there is no price.
func AwaitsPrice(step *worksheet.Step) bool {
	return step.Kind() == worksheet.NotApplied && title.IsUnpriced(step.Note())
}

// OwnerOwes stands beside a payable below zero.
var OwnerOwes = message.Words("below zero: this owner owes it")

// addOwnerServed adds up one owner's own lines.
func addOwnerServed(d *calculation, i int, line *ShareLine) {
	own := d.holderOf(i)
	line.Discounts, line.Premiums = adjust(d, own, line.Deductions)
	line.Services, line.Adjustments = d.serve(own, line.Drying, line.Discounts, line.Premiums)
	if deal := d.dealOf(i); deal.Price == nil {
		line.Value, line.NetValue, line.Payable = d.unpaid(own, deal)
		return
	}
	line.NetValue, line.Payable = d.paid(own, line.Value, line.Discounts, line.Premiums, line.Services)
	if line.Payable.Value().Sign() < 0 {
		d.sheet.Note(line.Payable, OwnerOwes)
	}
}

// ofEachPrice takes a percent of the price, of each owner's own where owners have
// deals of their own. The whole is then the sum of the parts.
func ofEachPrice(r discounting, gives rule.Direction, rate *worksheet.Step) {
	none := message.New("without a price; %s of one would be the figure", rate.Printed())
	switch {
	case !r.apart() && r.facts.Price == nil:
		r.None(none)
	case !r.apart():
		ofOnePrice(r, gives, rate)
	default:
		r.ofOwnPrices(gives, rate, none)
	}
}

func (r discounting) ofOwnPrices(gives rule.Direction, rate *worksheet.Step, none message.Text) {
	own := make([]*worksheet.Step, len(r.facts.Shares))
	var all []worksheet.Operand
	for i, s := range r.facts.Shares {
		price := r.ownPrice(i)
		if price == nil {
			continue
		}
		line := OwnLine(i+1, DiscountLine(r.rule.ID))
		unit := r.sheet.Work(line+".unit", r.holderOf(i).label(r.rule.Labels.Unit), worksheet.PercentOf(rate, price), r.rule.UnitRounding, r.rule.Source)
		part := worksheet.Over(worksheet.Times(worksheet.Times(unit, r.AmountOn(r.rule.Basis, unit.Value().Unit())), worksheet.Const(s.Parts)), worksheet.Const(s.Of))
		own[i] = r.sheet.Work(line, r.holderOf(i).label(r.rule.Label), part, r.rule.Rounding, r.rule.Source)
		all = append(all, own[i])
	}
	if len(all) == 0 {
		r.None(none)
		return
	}
	if r.ownDeductions == nil {
		r.ownDeductions = map[*discount.Rule][]*worksheet.Step{}
	}
	r.ownDeductions[r.rule] = own
	r.add(gives, r.sheet.Work(DiscountLine(r.rule.ID), r.rule.Label, worksheet.Sum(all[0], all[1:]...), quantity.Unrounded, r.rule.Source))
}
