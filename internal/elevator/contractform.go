package elevator

import "tenthpoint/internal/message"

// ContractForm is a sort of contract. The words stand in the facts of every book.
type ContractForm string

// The sorts of contract. A forward sale has its price; a basis contract fixes the basis and
// leaves the futures price open, hedge-to-arrive the other way round; a minimum price is a
// floor; a delayed price is open; a deferred payment is priced and paid later; the grain
// bank is drawn from again.
const (
	Forward         ContractForm = ""
	Cash            ContractForm = "cash"
	Basis           ContractForm = "basis"
	HedgeToArrive   ContractForm = "hedge-to-arrive"
	MinimumPrice    ContractForm = "minimum-price"
	DelayedPrice    ContractForm = "delayed-price"
	DeferredPayment ContractForm = "deferred-payment"
	GrainBank       ContractForm = "grain-bank"
)

// contractForms say what each sort fixes from the first day.
var contractForms = map[ContractForm]struct {
	name                  message.Text
	price, basis, futures bool
}{
	Forward:         {message.Words("forward"), true, false, false},
	Cash:            {message.Words("cash"), true, false, false},
	Basis:           {message.Words("basis fixed"), false, true, false},
	HedgeToArrive:   {message.Words("hedge to arrive"), false, false, true},
	MinimumPrice:    {message.Words("minimum price"), true, false, false},
	DelayedPrice:    {message.Words("delayed price"), false, false, false},
	DeferredPayment: {message.Words("deferred payment"), true, false, false},
	GrainBank:       {message.Words("in the grain bank"), false, false, false},
}

// ReadContractForm reads a sort of contract as it is typed; "forward" and nothing are one.
func ReadContractForm(word string) (ContractForm, bool) {
	f := ContractForm(word)
	if word == "forward" {
		f = Forward
	}
	return f, f.IsKnown()
}

// IsKnown reports whether there is such a sort.
func (f ContractForm) IsKnown() bool { _, known := contractForms[f]; return known }

// Name is its name on papers.
func (f ContractForm) Name() message.Text { return contractForms[f].name }

// FixesPrice reports whether such a contract has its price, or its floor, from the first day.
func (f ContractForm) FixesPrice() bool { return contractForms[f].price }

// PricedLater reports whether parts of such a contract get their price later; of a minimum
// price, a better one.
func (f ContractForm) PricedLater() bool {
	return f == Basis || f == HedgeToArrive || f == DelayedPrice || f == MinimumPrice
}
