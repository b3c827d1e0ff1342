package paysheet

import (
	"fmt"
	"slices"
	"strings"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Lien is a notice that a lender has a security interest in a grower's grain: who buys the grain while it
// is in force and pays the grower alone may have to pay again (7 U.S.C. 1631; confirm locally). It is a
// register of what was received, no judgement of it.
type Lien struct {
	Number    int64         `json:"number,string"`
	Grower    string        `json:"grower"`
	Holder    string        `json:"holder"`              // the secured party
	Commodity string        `json:"commodity,omitempty"` // empty for every grain
	CropYear  string        `json:"crop_year,omitempty"` // empty for every year
	County    string        `json:"county,omitempty"`
	Filed     quantity.Date `json:"filed"`
	Until     quantity.Date `json:"until"` // its last day
	Reference string        `json:"reference,omitempty"`
	By        string        `json:"by"`
	Ended     *Voided       `json:"ended,omitempty"`
}

// Kind names the fact in the journal.
func (Lien) Kind() string { return "money.lien" }

// ID is the notice's name among the records of the book.
func (l Lien) ID() string { return fmt.Sprint(l.Number) }

// Check returns what is wrong with the notice, or nil.
func (l Lien) Check() error {
	switch {
	case l.Grower == "" || strings.TrimSpace(l.Holder) == "":
		return message.Invalid.Errorf("a notice of lien names a grower and a lender; one of them is empty")
	case l.Filed.IsZero() || l.Until.IsZero() || l.By == "":
		return message.Invalid.Errorf("a notice of lien has its day, its last day and a person; one of them is empty")
	case l.Until.Before(l.Filed):
		return message.Invalid.Errorf("the notice of lien is of %s and ends on %s, which is before", l.Filed, l.Until)
	}
	return nil
}

// InForce reports whether the notice binds on a day.
func (l Lien) InForce(day quantity.Date) bool {
	return l.Ended == nil && day.Between(l.Filed, l.Until)
}

// Covers reports whether the notice is about some grain of a grower on a day. Grain whose crop year nobody
// stated is covered by a notice for any year.
func (l Lien) Covers(grower, commodity, cropYear string, day quantity.Date) bool {
	return l.InForce(day) && l.Grower == grower && (l.Commodity == "" || l.Commodity == commodity) &&
		(l.CropYear == "" || cropYear == "" || l.CropYear == cropYear)
}

// IsPaid reports whether the lender is among those a payment names.
func (l Lien) IsPaid(payees []string) bool {
	return slices.ContainsFunc(payees, func(name string) bool { return strings.EqualFold(strings.TrimSpace(name), strings.TrimSpace(l.Holder)) })
}
