package rates

import (
	"slices"

	"tenthpoint/internal/digest"
	"tenthpoint/internal/rates/discount"
	"tenthpoint/internal/rates/drying"
	"tenthpoint/internal/rates/handling"
	"tenthpoint/internal/rates/rule"
	"tenthpoint/internal/rates/shrink"
	"tenthpoint/internal/tomlfile"
)

// Read reads one edition. A non-nil error is a [tomlfile.Problems] with every mistake in the file.
func Read(name string, text []byte) (*Edition, error) {
	file := tomlfile.Parse(name, text)
	e := &Edition{File: name, Text: slices.Clone(text), Hash: digest.Of(text)}
	r := reader{e: e, file: file, root: file.Root()}
	if err := file.Read(func(*tomlfile.Table) { r.read() }); err != nil {
		return nil, err
	}
	return e, nil
}

// reader fills an edition from a file, table by table. It reports mistakes and continues, so that
// all mistakes are found at once; a cell that could not be read is not [rule.Cell.Given] and is
// compared with nothing.
type reader struct {
	e    *Edition
	file *tomlfile.File
	root *tomlfile.Table
	head rule.Head
}

func (r *reader) read() {
	head, _ := r.root.Table("edition", true)
	r.readHead(head)
	r.file.SetID(r.e.ID)
	r.e.Origin = r.file.Origin()
	r.units()
	r.rounding()
	r.dockage()
	r.rules()
	shares, _ := r.root.Table("shares", true)
	r.e.Shares = Shares{Remainder: shares.Choice("remainder", "first", "last", "largest"), Source: shares.Source("remainder")}
	r.order(head)
}

// rules reads shrink, handling, drying and discounts, each by its own package.
func (r *reader) rules() {
	e, h := r.e, &r.head
	h.Commodity, h.Units, h.Rounding = e.Commodity, e.Units, e.Rounding
	t, _ := r.root.Table("shrink", true)
	e.Shrink = shrink.Read(t, h)
	t, _ = r.root.Table("handling", true)
	e.Handling = handling.Read(t, h, e.Shrink.Method != shrink.None)
	t, _ = r.root.Table("drying", true)
	e.Drying = drying.Read(t, h)
	e.Discounts = discount.ReadAll(r.root.Tables("discount"), h)
}

// dockage reads the edition's addition to the grain's own rule. Of a grain for which the United
// States determine no dockage it is taken where the edition has the table.
func (r *reader) dockage() {
	_, has := r.e.Commodity.Dockage()
	if !has && !r.root.Has(dockagePlace) {
		return
	}
	t, _ := r.root.Table(dockagePlace, has)
	if r.e.Commodity.ID == "" { // reported
		t.IgnoreRest()
		return
	}
	r.e.Commodity = r.e.Commodity.TakingDockage()
	r.e.Dockage = DockageRule{
		MustTest: t.Choice("untested", "refuse", "none") == "refuse",
		Rounding: rule.LineRounding(t, r.e.Rounding.Weight), Source: t.Source(""),
	}
}
