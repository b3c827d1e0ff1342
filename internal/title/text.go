package title

import (
	"strings"

	"tenthpoint/internal/message"
)

// calls are the words people type for what grain is held under.
var calls = map[string]Under{
	"sold": CashSale, "cash": CashSale, "sale": CashSale, "spot": CashSale,
	"stored": OpenStorage, "storage": OpenStorage, "store": OpenStorage,
	"contract": Contract,
	"receipt":  Receipt, "delayed": DelayedPrice, "dp": DelayedPrice,
	"bank": GrainBank, "undecided": Nothing,
}

// Read reads terms as they are typed: "sold", "stored", "receipt 1042", "delayed
// D-7", "contract C-12", "bank", "undecided"; known is false for a text that begins
// with none of these words, such as the bare number of a contract. An empty text is
// that nothing is decided.
func Read(text string) (t Terms, known bool) {
	word, rest, _ := strings.Cut(strings.TrimSpace(text), " ")
	if word == "" {
		return Terms{}, true
	}
	under, known := calls[strings.ToLower(word)]
	return Terms{Under: under, No: strings.TrimSpace(rest)}, known
}

// ReadWhose reads whose grain it is; an empty text leaves it to the terms.
func ReadWhose(text string) (Whose, error) {
	switch w := Whose(strings.ToLower(strings.TrimSpace(text))); w {
	case "", Depositors, Houses, Undecided:
		return w, nil
	case "owner", "grower", "theirs":
		return Depositors, nil
	case "ours", "elevator":
		return Houses, nil
	}
	return "", message.Invalid.Errorf("%q is not one of depositor, house, undecided; choose one or leave it empty", text)
}

// Text is the terms as [Read] takes them back; a contract by its number alone.
func (t Terms) Text() string {
	switch {
	case t.Under == Contract && t.No != "":
		return t.No
	case t.No != "":
		return string(t.Under) + " " + t.No
	}
	return string(t.Under)
}
