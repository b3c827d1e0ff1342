package elevator

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// OwnEdition is an edition of rates that the house made its own. The fact has the manager; the text
// is kept by its hash.
type OwnEdition struct {
	ID        string        `json:"id"`
	Hash      string        `json:"edition_hash"`
	Commodity string        `json:"commodity"`
	Schedule  string        `json:"schedule"`
	From      quantity.Date `json:"from"`
	// Base is the edition it was begun from. AsItIs says that no figure of it was changed: the house
	// took an example for its own and was asked about it.
	Base   string `json:"base"`
	AsItIs bool   `json:"as_it_is,omitempty"`
}

// Kind names the fact in the journal.
func (OwnEdition) Kind() string { return "house.edition" }

// Check returns what is wrong with the record, or nil.
func (e OwnEdition) Check() error {
	if e.ID == "" || e.Hash == "" || e.Commodity == "" || e.From.IsZero() {
		return message.Invalid.Errorf("an edition of the house has an id, a text, a grain and a first day; one of them is missing")
	}
	return nil
}
