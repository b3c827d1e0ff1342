package slipcode

import (
	"encoding/hex"
	"fmt"
	"strings"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/worksheet"
)

// Facts are the ticket's facts, as a settlement takes them. Owners are numbered, for a
// code has no names.
func (c Code) Facts() settle.Facts {
	source := message.Words("the code on the slip")
	f := settle.Facts{
		Moisture: settle.Reading{Percent: c.Moisture, Source: source},
		Deal:     c.Deal.settled(source), Accepted: c.Accepted,
	}
	for _, d := range c.Drafts {
		f.Drafts = append(f.Drafts, settle.Draft{Name: d.Name, Gross: d.Gross, Tare: d.Tare, GrossSource: source, TareSource: source})
	}
	for _, r := range c.Sample {
		found := settle.Finding{Factor: r.Factor, Amount: r.Amount, Present: r.Present, Source: source}
		if r.IsSeen {
			found.Amount = quantity.Zero(quantity.Count)
		}
		f.Findings = append(f.Findings, found)
	}
	for i, o := range c.Owners {
		share := settle.Share{Owner: fmt.Sprintf("#%d", i+1), Parts: o.Parts, Of: o.Of, Drying: o.Drying}
		if o.Own != nil {
			own := o.Own.settled(source)
			share.Own = &own
		}
		f.Shares = append(f.Shares, share)
	}
	return f
}

func (d Deal) settled(source message.Text) settle.Deal {
	out := settle.Deal{Unpriced: d.Under.Unpriced()}
	if d.Price != nil {
		out.Price = &settle.Price{Amount: *d.Price, Source: source}
	}
	return out
}

// IsUnder reports whether a ticket was settled by an edition, by the hash of its file.
func (c Code) IsUnder(e *rates.Edition) bool {
	return strings.HasPrefix(e.Hash, hex.EncodeToString(c.Edition[:]))
}

// FindCode is the short code in letters, as the slip has it.
func (c Code) FindCode() string { return hex.EncodeToString(c.Find[:]) }

// Settle settles the ticket again by its own engine.
func (c Code) Settle(e *rates.Edition) (*settle.Settlement, error) {
	if !c.Left.IsWhole() {
		return nil, message.Invalid.Errorf("this code had no room for everything the ticket was settled by. Type the figures from the slip")
	}
	return c.Engine.Settle(c.Facts(), e)
}

// Compared is a line of the slip beside the same line worked again.
type Compared struct {
	Line
	Step *worksheet.Step // nil where the settlement has no such line
	Said quantity.Amount
}

// IsSame reports whether slip and settlement say the same.
func (c Compared) IsSame() bool { return c.Step != nil && c.Said.Equal(c.Step.Value()) }

// Compare holds every line of the code against a settlement of its facts.
func (c Code) Compare(s *settle.Settlement) []Compared {
	out := make([]Compared, len(c.Lines))
	for i, l := range c.Lines {
		out[i] = Compared{Line: l, Said: l.Figure}
		if step, ok := s.Sheet.Step(l.stepID(s.Edition)); ok {
			out[i].Step, out[i].Said = step, l.Figure.In(step.Value().Unit())
		}
	}
	return out
}

// stepID is the id of the line's step under an edition.
func (l Line) stepID(e *rates.Edition) string {
	id := l.Name
	if l.Discount > 0 {
		if l.Discount > len(e.Discounts) {
			return ""
		}
		id = settle.DiscountLine(e.Discounts[l.Discount-1].ID)
	}
	if l.Owner > 0 {
		return settle.OwnLine(l.Owner, id)
	}
	return id
}

// LinesOf are the lines that a slip says of a settlement: the whole load's and each owner's payable,
// or those of one owner. Without money there are none of money. Figures that a code cannot hold are
// left out.
func LinesOf(s *settle.Settlement, owner int, money bool) []Line {
	var out []Line
	add := func(l Line) {
		step, has := s.Sheet.Step(l.stepID(s.Edition))
		if !has || step.Kind() == worksheet.NotApplied || !money && step.Value().Unit().IsMoney() {
			return
		}
		if _, fits := packed(step.Value()); !fits {
			return
		}
		l.Figure = step.Value().In(quantity.Plain)
		out = append(out, l)
	}
	for i, name := range lines {
		add(Line{Name: name, Owner: owner})
		if i == 0 && owner == 0 {
			for n := range s.Shares {
				add(Line{Name: name, Owner: n + 1})
			}
		}
	}
	for i := range s.Edition.Discounts {
		add(Line{Discount: i + 1, Owner: owner})
	}
	return out
}

// Net is the net weight of all drafts, in the scale's unit.
func (c Code) Net() quantity.Amount {
	net := quantity.Zero(c.Units.Scale)
	for _, d := range c.Drafts {
		net = net.Add(d.Gross).Sub(d.Tare)
	}
	return net
}

// DryQuantity is the quantity of the whole load in bushels, or where there are none in what it is
// settled in; false where the code does not say it.
func (c Code) DryQuantity() (quantity.Amount, bool) {
	if a, ok := c.figure(Line{Name: settle.LineBushels}); ok {
		return a.In(quantity.Bushel), true
	}
	if a, ok := c.figure(Line{Name: settle.LineQuantity}); ok {
		return a.In(c.Units.Quantity), true
	}
	return quantity.Amount{}, false
}

func (c Code) figure(like Line) (quantity.Amount, bool) {
	for _, l := range c.Lines {
		if l.Name == like.Name && l.Discount == like.Discount && l.Owner == like.Owner {
			return l.Figure, true
		}
	}
	return quantity.Amount{}, false
}

// Says is the code's figure of a line; empty where it has none.
func (c Code) Says(of Line) string {
	if a, ok := c.figure(of); ok {
		return a.String()
	}
	return ""
}

// Label names a line. A discount has its place in the edition alone.
func (l Line) Label() message.Text {
	label := lineLabels[l.Name]
	if l.Discount > 0 {
		label = message.New("Discount %d of the rates", l.Discount)
	}
	if l.Owner > 0 {
		return message.New("Owner %d: %s", l.Owner, label)
	}
	return label
}

// IsOf reports whether a ticket was recorded by a law, by its hash.
func (c Code) IsOf(hash string) bool { return strings.HasPrefix(hash, hex.EncodeToString(c.Law[:])) }
