package tariff

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates/rule"
	"tenthpoint/internal/worksheet"
)

// Elevation is the charge for receiving grain and loading it out for its owner, per bu, cwt or t.
// A cell that is not given is no charge.
type Elevation struct {
	In, Out rule.Cell
}

// Receipts are the fees of warehouse receipts, each for one paper.
type Receipts struct {
	Issue, Renew, Replace rule.Cell
}

// Act is the service that elevation or a fee is charged for.
type Act string

const (
	Received  Act = "in"
	LoadedOut Act = "out"
	Issued    Act = "issue"
	Renewed   Act = "renew"
	Replaced  Act = "replace"
)

// ReadAct reads an act by its word; false is none.
func ReadAct(word string) (Act, bool) {
	_, known := actLabels[Act(word)]
	return Act(word), known
}

var actLabels = map[Act]message.Text{
	Received: message.Words("Elevation in"), LoadedOut: message.Words("Elevation out"),
	Issued: message.Words("Receipt issued"), Renewed: message.Words("Receipt renewed"), Replaced: message.Words("Receipt replaced"),
}

// cell is the posted figure for an act.
func (e *Edition) cell(act Act) rule.Cell {
	return map[Act]rule.Cell{
		Received: e.Elevation.In, LoadedOut: e.Elevation.Out,
		Issued: e.Receipts.Issue, Renewed: e.Receipts.Renew, Replaced: e.Receipts.Replace,
	}[act]
}

// Fee writes what an act costs on a sheet: elevation by the quantity, a paper's fee as it is.
func (e *Edition) Fee(s *worksheet.Sheet, id string, act Act, of *worksheet.Step) *worksheet.Step {
	label, cell := actLabels[act], e.cell(act)
	if !cell.Given() {
		return s.Skip(id, label, quantity.Dollar, e.Money, message.New("the tariff has no charge for it"), message.New("%v", e.ID))
	}
	rate := s.Rate(id+".rate", message.New("%s, rate", label), cell.Amount, cell.Source)
	if cell.Amount.Unit() == quantity.Dollar {
		return s.Work(id, label, worksheet.Same(rate), e.Money, cell.Source)
	}
	return s.Work(id, label, worksheet.Times(of, rate), e.Money, cell.Source)
}
