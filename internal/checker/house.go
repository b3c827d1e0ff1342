package checker

import (
	"encoding/hex"
	"encoding/json"
	"slices"
	"strings"
	"sync"

	"tenthpoint/internal/digest"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/law"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/signing"
	"tenthpoint/internal/slipcode"
)

// House is the data of one house in a page. The zero House is that of a page for every house.
type House struct {
	Business string `json:"business,omitempty"`
	Demo     bool   `json:"demo,omitempty"`
	Rules    string `json:"rules,omitempty"` // "us" or "canada"
	// Editions are the rates the house has posted.
	Editions []File `json:"editions,omitempty"`
	// Kept are editions that tickets were settled under and that are posted no longer: they settle
	// those tickets again, and nothing else.
	Kept []File `json:"kept,omitempty"`
	// Keys are the public keys of the house, the one in force last, and Computers those it certified.
	Keys      []signing.Public   `json:"keys,omitempty"`
	Computers []signing.Computer `json:"computers,omitempty"`
	// Heads are ends of the book that the house signed, each with the tickets that were in it.
	Heads []Head `json:"heads,omitempty"`
}

// File is the text of an edition.
type File struct {
	Name string `json:"name"`
	Text string `json:"text"`
}

// Head is an end of the book on a day, as it is noted outside the book, and the short codes of the
// tickets issued since the head before.
type Head struct {
	Day     quantity.Date `json:"day"`
	Note    string        `json:"note"`
	Tickets []string      `json:"tickets,omitempty"`
}

// Checker answers what a page is asked.
type Checker struct {
	house    House
	rates    []ratesFile
	printers map[string]func() *message.Printer // by language; English has none
	names    map[string]string                  // of the languages, each in its own words
}

// ratesFile is a file of rates, read when it is first needed.
type ratesFile struct {
	hash   string
	posted bool
	read   func() (*rates.Edition, error)
}

func fileOf(f File, posted bool) ratesFile {
	return ratesFile{digest.Of([]byte(f.Text)), posted, sync.OnceValues(func() (*rates.Edition, error) { return rates.Read(f.Name, []byte(f.Text)) })}
}

// New makes a checker of what a page holds: a house, and the catalogs of languages as their files. A
// catalog is read when its language is first asked for, an edition when it is needed: a phone would
// wait for all of them. The page is made of files that were read.
func New(h House, catalogs ...json.RawMessage) (*Checker, error) {
	c := &Checker{house: h, printers: map[string]func() *message.Printer{"en": func() *message.Printer { return nil }}, names: map[string]string{"en": "English"}}
	for _, file := range catalogs {
		var head struct{ Language, Name string }
		if err := json.Unmarshal(file, &head); err != nil {
			return nil, err
		}
		c.names[head.Language] = head.Name
		c.printers[head.Language] = sync.OnceValue(func() *message.Printer {
			catalog, err := message.ReadCatalog(file)
			if err != nil {
				return nil // the page was made of catalogs that were read: in English then
			}
			return message.NewPrinter(catalog)
		})
	}
	for _, f := range h.Editions {
		c.rates = append(c.rates, fileOf(f, true))
	}
	for _, f := range h.Kept {
		c.rates = append(c.rates, fileOf(f, false))
	}
	return c, nil
}

// Add takes one more edition, such as a file that a house has posted.
func (c *Checker) Add(f File) error {
	p := fileOf(f, true)
	if _, err := p.read(); err != nil {
		return err
	}
	if !slices.ContainsFunc(c.rates, func(known ratesFile) bool { return known.hash == p.hash }) {
		c.rates = append(c.rates, p)
	}
	return nil
}

// editions are all editions that the page posts.
func (c *Checker) editions() []*rates.Edition {
	var out []*rates.Edition
	for _, p := range c.rates {
		if e, err := p.read(); err == nil && p.posted {
			out = append(out, e)
		}
	}
	return out
}

// find is the first edition whose file has such a hash.
func (c *Checker) find(is func(hash string) bool) (*rates.Edition, bool) {
	for _, p := range c.rates {
		if is(p.hash) {
			e, err := p.read()
			return e, err == nil
		}
	}
	return nil, false
}

// edition finds an edition by its hash.
func (c *Checker) edition(hash string) (*rates.Edition, bool) {
	return c.find(func(of string) bool { return of == hash })
}

// editionOf finds the edition a ticket was settled by.
func (c *Checker) editionOf(code slipcode.Code) (*rates.Edition, bool) {
	begins := hex.EncodeToString(code.Edition[:])
	return c.find(func(of string) bool { return strings.HasPrefix(of, begins) })
}

// shipped are the rules of law inside the program.
var shipped = sync.OnceValue(func() *law.Set {
	set, problems := law.NewSet(law.Shipped()...)
	if err := problems.Err(); err != nil {
		panic("checker: " + err.Error())
	}
	return set
})

// tables are the recording rules of a ticket. Known is false where the ticket was recorded by rules
// that this page does not have; those of its day then take their place.
func tables(code slipcode.Code) (t *grain.Tables, known bool) {
	if code.Law == [len(code.Law)]byte{} {
		return grain.First(), true
	}
	for _, rules := range []string{"us", "canada"} {
		set := shipped().For(rules)
		for _, place := range append([]string{""}, set.Places()...) {
			if l := set.In(place).On(code.Day); code.IsOf(l.Hash()) {
				t, err := grain.TablesOf(l)
				return t, err == nil
			}
		}
	}
	return tablesOn(code.Units.Weight == quantity.Kg, code.Day), false
}

// tablesOn are the recording rules of a day, of Canada or of the United States.
func tablesOn(canada bool, day quantity.Date) *grain.Tables {
	rules := "us"
	if canada {
		rules = "canada"
	}
	t, err := grain.TablesOf(shipped().For(rules).On(day))
	if err != nil {
		return grain.First()
	}
	return t
}

// Added takes one more edition, and says what came of it.
func (c *Checker) Added(language string, f File) string {
	s := c.sheet(language)
	if err := c.Add(f); err != nil {
		return s.printer.Error(err)
	}
	return s.Say("The rates were opened.")
}
