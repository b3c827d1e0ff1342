package rates

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"slices"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/tomlfile"
)

// Read reads one edition. The error, when there is one, is a
// [tomlfile.Problems] with every mistake in the file.
func Read(name string, text []byte) (*Edition, error) {
	file := tomlfile.Parse(name, text)
	if err := file.Problems().Err(); err != nil {
		return nil, err
	}
	sum := sha256.Sum256(text)
	e := &Edition{Text: slices.Clone(text), Hash: hex.EncodeToString(sum[:])}
	r := reader{e: e, root: file.Root()}
	r.read()
	file.Root().Close()
	if err := file.Problems().Err(); err != nil {
		return nil, err
	}
	return e, nil
}

// reader fills an edition from a file, table by table.
type reader struct {
	e    *Edition
	root *tomlfile.Table
}

func (r *reader) read() {
	head, _ := r.root.Table("edition", true)
	r.head(head)
	r.origin()
	r.units()
	r.rounding()
	r.shrink()
	r.handling()
	r.drying()
	r.discounts()
	shares, _ := r.root.Table("shares", true)
	r.e.Shares = Shares{Remainder: shares.Choice("remainder", "first", "last", "largest"), Row: shares.Place("remainder")}
	r.order(head)
}

func (r *reader) head(t *tomlfile.Table) {
	e := r.e
	e.ID, e.Title, e.Schedule = t.Text("id"), t.Text("title"), t.Text("schedule")
	e.From, e.Until = t.Date("from"), t.OptionalDate("until")
	e.Status = Status(t.Choice("status", string(Example), string(House), string(Statute)))
	e.Corrects = t.OptionalText("corrects")
	e.Order = t.Texts("order")
	if id := t.Text("commodity"); id != "" {
		c, err := grain.ByID(id)
		if err != nil {
			t.Wrong("commodity", "edition.commodity: "+err.Error(), "")
		}
		e.Commodity = c
	}
	if !e.Until.IsZero() && e.Until.Before(e.From) {
		t.Wrong("until", fmt.Sprintf("the edition ends on %s, before it begins on %s", e.Until, e.From), "Swap the two days, or leave until out for an edition without an end.")
	}
	if e.Corrects != "" && e.Corrects == e.ID {
		t.Wrong("corrects", "the edition says that it corrects itself", "Give the corrected edition a new id, and name the old one here.")
	}
}

func (r *reader) origin() {
	t, _ := r.root.Table("origin", true)
	r.e.Origin = Origin{Issued: t.Date("issued"), By: t.Text("by"), Document: t.Text("document"), Note: t.OptionalText("note")}
}

func (r *reader) units() {
	t, _ := r.root.Table("units", true)
	u := Units{Weight: quantity.Lb, Settle: quantity.Bushel, Currency: t.Text("currency")}
	if t.Choice("weight", "lb", "kg") == "kg" {
		u.Weight = quantity.Kg
	}
	switch t.Choice("settle", "bu", "cwt", "t") {
	case "cwt":
		u.Settle = quantity.Cwt
	case "t":
		u.Settle = quantity.Tonne
	}
	if bushel, ok := t.OptionalAmount("bushel", u.Weight.Per(quantity.Bushel)); ok {
		u.Bushel = bushel
		u.BushelSource = t.Text("bushel_source")
		if bushel.Sign() <= 0 {
			t.Wrong("bushel", fmt.Sprintf("a bushel of %s cannot be divided by", bushel), "Write the legal weight of one bushel, such as \"56 lb/bu\".")
		}
	} else if u.Settle == quantity.Bushel {
		t.Wrong("bushel", "units.bushel is missing, and the edition settles in bushels", "Add the legal weight of one bushel, such as bushel = \"56 lb/bu\".")
	}
	r.e.Units = u
}

func (r *reader) rounding() {
	t, _ := r.root.Table("rounding", true)
	r.e.Rounding = Places{
		Moisture: t.Rounding("moisture"), Weight: t.Rounding("weight"),
		Quantity: t.Rounding("quantity"), Money: t.Rounding("money"),
	}
}

// cell reads a required figure with its place.
func cell(t *tomlfile.Table, key string, units ...quantity.Unit) Cell {
	return Cell{Amount: t.Amount(key, units...), Row: t.Place(key)}
}

// optionalCell reads a figure that may be left out.
func optionalCell(t *tomlfile.Table, key string, units ...quantity.Unit) Cell {
	a, ok := t.OptionalAmount(key, units...)
	if !ok {
		return Cell{}
	}
	return Cell{Amount: a, Row: t.Place(key)}
}

// moistureCell reads a moisture and holds it above nought and below 100 %.
func moistureCell(t *tomlfile.Table, key string) Cell {
	c := cell(t, key, quantity.Percent)
	if t.Has(key) && (c.Amount.Sign() <= 0 || !c.Amount.Less(hundred)) {
		t.Wrong(key, fmt.Sprintf("%s.%s is %s; a moisture lies above 0 %% and below 100 %%", t.Path(), key, c.Amount), "At 100 % there is no grain left: the formula would divide by 100 - 100 = 0.")
		c.Amount = quantity.Int(1, quantity.Percent)
	}
	return c
}

var hundred = quantity.Int(100, quantity.Percent)

// percentCell reads a percent from 0 up to, not including, 100.
func percentCell(t *tomlfile.Table, key string) Cell {
	c := cell(t, key, quantity.Percent)
	if c.Amount.Sign() < 0 || !c.Amount.Less(hundred) {
		t.Wrong(key, fmt.Sprintf("%s.%s is %s", t.Path(), key, c.Amount), "It must be from 0 % to below 100 %.")
	}
	return c
}

func basis(t *tomlfile.Table) Basis {
	return Basis(t.Choice("basis", string(Net), string(Clean), string(Dry), string(Left)))
}

// step reads "continuous", or a step in points and a rule such as "0.5 up".
func step(t *tomlfile.Table) Step {
	text := t.Text("step")
	if text == "continuous" {
		return Step{Rounding: quantity.Unrounded, Row: t.Place("step")}
	}
	r, err := quantity.ParseRounding(text)
	if text != "" && err != nil {
		t.Wrong("step", fmt.Sprintf("%s.step: %v", t.Path(), err), "Write \"continuous\", or the step in points and the rule, such as \"0.5 up\".")
	}
	return Step{Rounding: r, Row: t.Place("step")}
}
