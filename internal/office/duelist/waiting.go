package duelist

import (
	"encoding/json"

	"tenthpoint/internal/dispute"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office/terms"
	"tenthpoint/internal/quantity"
)

func (g *gathering) undecided() error {
	all, err := terms.UndecidedIn(g.rows, g.house.Laws, g.today)
	if err != nil {
		return err
	}
	var undecided lots
	for _, u := range all {
		g.near(&undecided, lot{day: u.Due, grower: u.Owner, commodity: u.Commodity, passed: u.Rules.Said()}, u.Ticket, u.Quantity)
	}
	g.addLots(undecided, Undecided, message.Words("not said what becomes of it"))
	return nil
}

// samples are those kept long enough by a day still to come, day by day.
func (g *gathering) samples() error {
	kept, err := g.lists.SamplesKept(g.today.String(), g.last.String())
	if err != nil {
		return err
	}
	for _, k := range kept {
		day, err := quantity.ParseDate(k.Until)
		if err != nil {
			return err
		}
		g.add(Due{Day: day, Kind: Sample, IfPassed: message.New("they may be thrown out, unless disputed"),
			What: message.Count(k.Count, "%d sample is kept long enough", "%d samples are kept long enough")})
	}
	return nil
}

// disputes are those for which another test can still be asked for, or could be.
func (g *gathering) disputes() error {
	rows, err := g.lists.Records("dispute")
	if err != nil {
		return err
	}
	for _, row := range rows {
		var one dispute.Dispute
		if err := json.Unmarshal(row.Body, &one); err != nil {
			return message.Errorf("dispute %s cannot be read: %w", row.ID, err)
		}
		if one.Phase != dispute.Open {
			continue
		}
		g.add(Due{Day: one.Raised.Due, Kind: Disputed,
			What:     message.New("dispute %v about ticket %d: another test is to be asked for", one.ID, one.Raised.Ticket),
			IfPassed: message.New("both sides may still agree to one")})
	}
	return nil
}
