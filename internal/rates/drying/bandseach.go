package drying

import (
	"fmt"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates/rule"
	"tenthpoint/internal/tomlfile"
	"tenthpoint/internal/worksheet"
)

// BandsEach charges every point at the rate of its band.
var BandsEach = &Method{
	ID:   "bands-each",
	Said: "every point at the rate of its band",
	Read: func(t *tomlfile.Table, h *rule.Head, r *Rule) {
		r.Bands = readBands(t, h, rule.PerPointUnits(), "the moisture that points are counted down to", r.To)
	},
	Lines: postBands,
	Work: func(w rule.Working, r Rule, to, points *worksheet.Step) (worksheet.Expr, bool) {
		if _, ok := bandOf(w, r); !ok {
			return worksheet.Expr{}, false
		}
		return eachBand(w, r, to, points), true
	},
	Ticket:    rule.Figures[Rule],
	Explained: "every point at the rate of the band it lies in, as income tax is worked. One point more never makes the points before it dearer.",
}

// eachBand charges the points that lie in each band at that band's rate. The points are counted in
// the edition's steps first and then assigned to the bands from below, so that the bands add up to
// exactly the points charged.
func eachBand(w rule.Working, r Rule, to, points *worksheet.Step) worksheet.Expr {
	sheet := w.Sheet()
	top := sheet.Work("drying.top", message.Words("Points counted up to"), worksheet.Sum(to, worksheet.AsPercent(points)), quantity.Unrounded, worksheet.Unsourced)
	var parts []worksheet.Operand
	for i, band := range r.Bands {
		inside := pointsInside(band, to, top, i == len(r.Bands)-1)
		if inside.Value().Sign() <= 0 {
			continue
		}
		n := i + 1
		share := sheet.Work(fmt.Sprintf("drying.points.%d", n), message.New("Points %s", band), inside, quantity.Unrounded, band.Cell.Source)
		rate := w.Rate(fmt.Sprintf("drying.rate.%d", n), message.New("Drying rate %s", band), band.Cell)
		parts = append(parts, worksheet.Times(rate, share, w.AmountOn(r.Basis, rate.Value().Unit())))
	}
	if len(parts) == 0 {
		return worksheet.Same(worksheet.Const(quantity.Zero(quantity.Dollar)))
	}
	return worksheet.Sum(parts[0], parts[1:]...)
}
