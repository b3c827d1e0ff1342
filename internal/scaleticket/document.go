package scaleticket

import (
	"strings"
	"time"
)

// Document is a composed ticket: ready strings in the order they print.
type Document struct {
	// Marks are the words that must be seen before anything else is read: VOID,
	// MANUAL WT, REPRINT 2, EXAMPLE - NOT FOR TRADE.
	Marks []string
	// Stamp is a word set across the paper; empty on a ticket in force.
	Stamp string
	// Sections are the parts of the ticket in their order.
	Sections []Section
	// Footer are the sentences at the foot of the ticket.
	Footer []string
	// CodeLine is the code the ticket is found by, as printed with the QR code;
	// empty on a preview.
	CodeLine string
	// Running heads the pages after the first: "Ticket 1042".
	Running string
	// PageOf is the page number with two %d, the page and how many there are.
	PageOf string
	// Named combines a name with what it names, two %s.
	Named string
	// Made is the date of the paper: when the ticket was issued.
	Made time.Time

	// Preview marks a document that is no ticket yet.
	Preview bool

	square Square
}

// Form is the layout of a section.
type Form int

// The forms of a section.
const (
	Letterhead Form = iota // the elevator: name, address, phone
	Numbering              // which ticket this is
	Facts                  // what and who, side by side where there is room
	Figures                // the few large figures people look for first
	Ledger                 // figures in a column, to be added by eye
	Signing                // rules to sign on
	SmallPrint             // the working
)

// Section is one part of the ticket.
type Section struct {
	// ID names the part: "weight". It does not change with the language.
	ID    string
	Title string
	Form  Form
	Lines []Line
}

// Kind is the kind of a line.
type Kind int

// The kinds of line.
const (
	Pair     Kind = iota // what, and how much or who
	Total                // a pair that the lines above add up to
	Struck               // a figure that was replaced, crossed out
	Warning              // a sentence that must be noticed
	Heading              // a title inside a section
	Sentence             // running words
	SignHere             // a rule with a name under it
)

// Line is one line of the ticket.
type Line struct {
	Kind Kind
	// Field is the fact the line shows, by the name that settle.Problem and load.Missing give it:
	// "tare". Empty where there is none.
	Field string
	Label string
	Value string
	// Mark must be noticed beside the value: MANUAL WT.
	Mark string
	// Notes are printed below in small type: where a figure comes from.
	Notes []string
	// Missing marks a value that is not known yet, in the place where it will print.
	Missing bool
	// Emphasis marks the figures people look for first.
	Emphasis bool
}

// Section finds a part by its id.
func (d Document) Section(id string) (Section, bool) {
	for _, s := range d.Sections {
		if s.ID == id {
			return s, true
		}
	}
	return Section{}, false
}

// Missing lists the fields that are still to come, in the order of the slip.
func (d Document) Missing() []string {
	var fields []string
	seen := map[string]bool{}
	for _, s := range d.Sections {
		for _, l := range s.Lines {
			if l.Missing && !seen[l.Field] {
				seen[l.Field] = true
				fields = append(fields, l.Field)
			}
		}
	}
	return fields
}

// Joined sets the parts that are not empty side by side.
func Joined(between string, parts ...string) string {
	var some []string
	for _, p := range parts {
		if p != "" {
			some = append(some, p)
		}
	}
	return strings.Join(some, between)
}
