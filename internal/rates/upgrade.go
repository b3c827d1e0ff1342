package rates

import (
	"fmt"
	"regexp"
	"strings"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates/discount"
	"tenthpoint/internal/rates/rule"
)

// Upgrade is an edition of the first format written in the second: a new edition from a day on.
// The text it is made from is never changed, since tickets keep it.
type Upgrade struct {
	ID   string
	From quantity.Date
	// LaterDry and AcceptedRefusal are what the new edition says; empty is "dry" and the last row.
	LaterDry        LaterDry
	AcceptedRefusal AcceptedRefusal
}

// Text returns the text of the new edition: the old one, comments and all, with a new id and first
// day, and what the second format says. Chosen tells what was chosen and why. The error says why
// there is nothing to upgrade, or is what [Read] finds wrong in the new text.
func (u Upgrade) Text(e *Edition) (text []byte, chosen []message.Text, err error) {
	if e.Format.Number > 1 {
		return nil, nil, message.Refused.Errorf("edition %v is of format %d already", e.ID, e.Format.Number)
	}
	if !u.From.After(e.From) {
		return nil, nil, message.Invalid.Errorf("the new edition is to begin on %s, and the old one begins on %s; two are not in force on one day. Give a later day", u.From, e.From)
	}
	u = u.filled()
	before, head, after, found := headOf(string(e.Text))
	if !found {
		return nil, nil, message.Invalid.Errorf("the head of edition %v does not begin with a line [edition]; give it one", e.ID)
	}
	text = []byte(before + u.head(head, e.ID) + after)
	if _, err := Read(u.ID+".toml", text); err != nil {
		return nil, nil, err
	}
	return text, u.chosen(e), nil
}

// head is the head of the new edition. It corrects the old one, and so takes its place from the day on.
func (u Upgrade) head(old, corrects string) string {
	said := fmt.Sprintf("from = %q\ncorrects = %q\n%s = \"2\"\n%s = %q\n%s = %q\n", u.From, corrects, formatKey, laterKey, u.LaterDry, acceptedKey, u.AcceptedRefusal)
	for _, one := range []struct{ key, line string }{{formatKey, ""}, {"until", ""}, {"corrects", ""}, {"id", fmt.Sprintf("id = %q\n", u.ID)}, {"from", said}} {
		old = regexp.MustCompile(`(?m)^[ \t]*`+one.key+`[ \t]*=[^\n]*\n`).ReplaceAllLiteralString(old, one.line)
	}
	return old
}

// headOf takes the table [edition] out of a text: the lines from its name to the next table's.
func headOf(text string) (before, head, after string, found bool) {
	name := regexp.MustCompile(`(?m)^[ \t]*\[[ \t]*edition[ \t]*\][^\n]*\n`).FindStringIndex(text)
	if name == nil {
		return "", "", "", false
	}
	end := len(text)
	if next := regexp.MustCompile(`(?m)^[ \t]*\[`).FindStringIndex(text[name[1]:]); next != nil {
		end = name[1] + next[0]
	}
	return text[:name[1]], text[name[1]:end], text[end:], true
}

func (u Upgrade) filled() Upgrade {
	if u.LaterDry == "" {
		u.LaterDry = OnDry
	}
	if u.AcceptedRefusal == "" {
		u.AcceptedRefusal = LastRow
	}
	return u
}

func (u Upgrade) chosen(e *Edition) []message.Text {
	later := message.New("%v = %q: no discount of the weight comes before a rule on the dry weight, so it changes nothing here.", laterKey, u.LaterDry)
	if e.changesDry() {
		later = message.New("%v = %q: a rule on the dry weight comes after a discount of the weight. \"dry\" is the dry-equivalent weight of all the clean grain, \"settled\" what is left of the load.", laterKey, u.LaterDry)
	}
	accepted := message.New("%v = %q: no row turns loads away without a figure, so it changes nothing here.", acceptedKey, u.AcceptedRefusal)
	if e.hasBareRefusals() {
		accepted = message.New("%v = %q: a load accepted in a row that is rejected brings the figure of the row beside it (\"last-row\") or no discount at all (\"nothing\").", acceptedKey, u.AcceptedRefusal)
	}
	return []message.Text{message.New("id = %q, from = %q, corrects = %q", u.ID, u.From.String(), e.ID), later, accepted}
}

// changesDry reports whether a rule on the dry weight comes after a discount of the weight.
func (e *Edition) changesDry() bool {
	changed := false
	for _, place := range e.Order {
		if changed && e.basisOf(place) == rule.Dry {
			return true
		}
		d, is := e.discountAt(place)
		changed = changed || is && d.Of == discount.OfWeight
	}
	return false
}

func (e *Edition) hasBareRefusals() bool {
	for _, d := range e.Discounts {
		for _, row := range d.Rows {
			if row.Refuse && !row.Cell.Given() {
				return true
			}
		}
	}
	return false
}

// NextID is the id of an edition that follows another: a letter more, or the next letter.
func NextID(id string) string {
	base, letter, found := cutLast(id, "-")
	if found && len(letter) == 1 && letter[0] >= 'b' && letter[0] < 'z' {
		return base + "-" + string(letter[0]+1)
	}
	return id + "-b"
}

func cutLast(s, sep string) (before, after string, found bool) {
	at := strings.LastIndex(s, sep)
	if at < 0 {
		return s, "", false
	}
	return s[:at], s[at+len(sep):], true
}
