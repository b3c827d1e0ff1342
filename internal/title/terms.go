package title

import (
	"slices"
	"tenthpoint/internal/message"
)

// Whose tells who owns grain.
type Whose string

// Grain belongs to who delivered it, to the house, or it is not decided.
const (
	Depositors Whose = "depositor"
	Houses     Whose = "house"
	Undecided  Whose = "undecided"
)

// Under is the title grain is held under. The words are in the facts of every book.
type Under string

// What grain is held under. Nothing is that nobody has said it yet.
const (
	Nothing      Under = ""
	CashSale     Under = "sold"
	OpenStorage  Under = "stored"
	Contract     Under = "contract"
	Receipt      Under = "receipt"
	DelayedPrice Under = "delayed"
	GrainBank    Under = "bank"
)

// Terms are whose grain it is and under what. The zero Terms are undecided.
type Terms struct {
	// Whose is left out where it follows from Under.
	Whose Whose `json:"whose,omitempty"`
	Under Under `json:"disposition,omitempty"`
	// No is the number of the contract or the receipt. Its key is that of the time
	// when contracts alone had one.
	No string `json:"contract,omitempty"`
}

// kind is the meaning of one title.
type kind struct {
	under Under
	whose []Whose // who may own it; the first does unless it is said otherwise
	// numbered tells that a paper with a number goes with it, priced that grain held
	// under it can have a price.
	numbered, priced bool
	unpriced         message.Text // what stands where a price would
	name             message.Text // what papers call it
	words            string       // the same before a number
}

// kinds is the table of what grain can be held under.
var kinds = []kind{
	{Nothing, []Whose{Undecided, Depositors}, false, true, message.Words("price not set"), message.Words("not decided"), ""},
	{CashSale, []Whose{Houses}, false, true, message.Words("price not set"), message.Words("sold"), ""},
	{OpenStorage, []Whose{Depositors}, false, false, message.Words("no price: stored"), message.Words("stored"), ""},
	{Contract, []Whose{Houses, Depositors}, true, true, message.Words("price not set"), message.Words("on contract"), "on contract %s"},
	{Receipt, []Whose{Depositors}, true, false, message.Words("no price: on warehouse receipt"), message.Words("on warehouse receipt"), "on warehouse receipt %s"},
	{DelayedPrice, []Whose{Houses, Depositors}, true, false, message.Words("no price yet: delayed price"), message.Words("delayed price"), "delayed price %s"},
	{GrainBank, []Whose{Depositors}, false, false, message.Words("no price: grain bank"), message.Words("in the grain bank"), ""},
}

// Kinds are the titles grain can be held under, in the order of papers.
func Kinds() []Under {
	out := make([]Under, len(kinds))
	for i, k := range kinds {
		out[i] = k.under
	}
	return out
}

// of is the meaning of what grain is held under; what no program has written
// means no more than that nothing is decided.
func of(u Under) kind {
	for _, k := range kinds {
		if k.under == u {
			return k
		}
	}
	return kinds[0]
}

// Owner is whose grain it is: as it was said, or as what it is held under makes it.
func (t Terms) Owner() Whose {
	if t.Whose != "" {
		return t.Whose
	}
	return of(t.Under).whose[0]
}

// TakesPrice reports whether the grain can have a price. Stored grain has none:
// it stays its owner's, and a paper that says both would claim it twice.
func (t Terms) TakesPrice() bool { return of(t.Under).priced && t.Whose != Depositors }

// Unpriced says, where a price would stand, that there is none. It never
// promises one: "price later" is a contract of its own.
func (u Under) Unpriced() message.Text { return of(u).unpriced }

// IsUnpriced reports whether a note stands where a price would.
func IsUnpriced(note message.Text) bool {
	return note.Equal(Later) || slices.ContainsFunc(kinds, func(k kind) bool { return k.unpriced.Equal(note) })
}

// IsKnown reports whether grain can be held under it.
func (u Under) IsKnown() bool { return of(u).under == u }

// IsNumbered reports whether a paper with a number goes with it.
func (u Under) IsNumbered() bool { return of(u).numbered }

// Name is its name on papers: "stored".
func (u Under) Name() message.Text { return of(u).name }

// IsDecided reports whether anybody has said what the grain is held under.
func (t Terms) IsDecided() bool { return t.Under != Nothing }

// Said are the terms as papers say them: "on contract C-12", "stored".
func (t Terms) Said() message.Text {
	k := of(t.Under)
	if k.words == "" || t.No == "" {
		return k.name
	}
	return message.New(k.words, message.Own(t.No))
}

// Check says what cannot stand together in terms that are newly typed. What older
// books hold is read as it is.
func (t Terms) Check() error {
	k := of(t.Under)
	switch {
	case k.under != t.Under:
		return message.Invalid.Errorf("%q is nothing that grain is held under; write one of sold, stored, contract, receipt, delayed, bank", string(t.Under))
	case k.numbered && t.No == "":
		return message.Invalid.Errorf("%s has a number; write it after the word, like %q", k.name, string(k.under)+" 17")
	case !k.numbered && t.No != "":
		return message.Invalid.Errorf("%s has no number, and %q is one; leave it out", k.name, t.No)
	case t.Whose != "" && !k.mayBe(t.Whose):
		return message.Invalid.Errorf("grain that is %s is %s, not %s", k.name, whoseWords[k.whose[0]], whoseWords[t.Whose])
	}
	return nil
}

var whoseWords = map[Whose]message.Text{
	Depositors: message.Words("the depositor's"), Houses: message.Words("the house's"), Undecided: message.Words("undecided"),
}

// Said is whose it is, as papers say it.
func (w Whose) Said() message.Text { return whoseWords[w] }

func (k kind) mayBe(w Whose) bool {
	for _, one := range k.whose {
		if one == w {
			return true
		}
	}
	return false
}

// Later is the title as the settlements of the first two engines, which knew of no title,
// note a line without a price. People are told [Under.Remark].
var Later = message.Words("price later")

// Remark is a note of a working as it is told of grain held under it.
func (u Under) Remark(note message.Text) message.Text {
	if note.Equal(Later) {
		return u.Unpriced()
	}
	return note
}
