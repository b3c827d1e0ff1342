package yard

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"tenthpoint/internal/entry"
	"tenthpoint/internal/entrytest"
	"tenthpoint/internal/guard"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/schedules"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session/sessiontest"
)

// Every line of the table of typed texts means on the form and its sheets what it
// means everywhere.
func TestParity(t *testing.T) {
	table := entrytest.Read(t, "../..")
	editions, err := schedules.Editions()
	sessiontest.Must(t, err)
	desks := map[string]*scalehouse.Desk{}
	for _, c := range table.Cases {
		if desks[c.House] == nil {
			desks[c.House] = entrytest.Open(t, c.House, editions)
		}
		r := sessiontest.RoomAt(t, desks[c.House])
		f := NewLoadForm(r.Session, nil)
		outcome := typeCase(t, r, f, c)
		table.Check(t, c, outcome, f.Book)
	}
}

// typeCase types a case as a clerk does: first the fields of the form, then the
// sheets, and a manager's permission last.
func typeCase(t *testing.T, r *sessiontest.Room, f *LoadForm, c entrytest.Case) string {
	t.Helper()
	var later []entrytest.Text
	for _, text := range c.Texts() {
		if !typeText(r, f, text) {
			later = append(later, text)
		}
	}
	sessiontest.Must(t, f.Commit())
	for _, text := range later {
		if refused := onSheet(t, r, f, text); refused != "" {
			return "refused " + refused
		}
	}
	return formOutcome(f, c)
}

// typeText types a text into its field, putting the field on the form first where
// it is not there. It reports false for a text of a sheet.
func typeText(r *sessiontest.Room, f *LoadForm, text entrytest.Text) bool {
	if _, draft, isWeight := entry.SideOf(text.Field); isWeight && draft != "" && f.Now.CanSplit() {
		f.Split()
	}
	for _, o := range ResultsOf(f).others() {
		if o.Code == text.Field {
			ResultsOf(f).AskMore(func(string) {})
			r.Answer(map[string]string{"factor": text.Field})
		}
	}
	_, known := f.Now.Line(text.Field)
	if known {
		f.Type(text.Field, text.Typed)
	}
	return known
}

// onSheet answers the sheet with the field of a text, and returns the field when
// it is refused.
func onSheet(t *testing.T, r *sessiontest.Room, f *LoadForm, text entrytest.Text) (refused string) {
	t.Helper()
	values := map[string]string{text.Field: text.Typed}
	switch {
	case text.Field == "shares":
		sharesSheet{f}.ask()
		values = sharesValues(text.Typed)
	case text.Field == "owner-terms":
		sharesSheet{f}.ask()
		values = ownersValues(f, text.Typed)
	case strings.HasPrefix(text.Field, "accept."):
		limits{f}.ask()
		values = map[string]string{"who": entrytest.Manager, "reason": text.Typed}
	case slices.Contains(ofPapers, text.Field):
		papersSheet{detailsSheet{f}}.ask()
	default:
		detailsSheet{f}.ask()
	}
	if wrong := r.Answer(values); len(wrong) > 0 {
		r.Asked = nil
		return text.Field
	}
	if r.State == model.Stop {
		t.Errorf("%v: %s", text, r.Last())
	}
	return ""
}

// sharesValues are "102=2/3; 901=1/3" as the sheet of shares is filled in.
func sharesValues(text string) map[string]string {
	values := map[string]string{}
	for i := range 4 {
		values[fmt.Sprint("owner", i+1)], values[fmt.Sprint("share", i+1)] = "", ""
	}
	if text == "none" {
		return values
	}
	for i, one := range strings.Split(text, ";") {
		owner, part, _ := strings.Cut(strings.TrimSpace(one), "=")
		values[fmt.Sprint("owner", i+1)], values[fmt.Sprint("share", i+1)] = owner, part
	}
	return values
}

// ownersValues are "102=sold; 901=stored" as the sheet of owners is filled in.
func ownersValues(f *LoadForm, text string) map[string]string {
	var shares []string
	owners := f.Now.Load.Details.Shares
	for _, o := range owners {
		shares = append(shares, fmt.Sprintf("%s=%s/%s", o.ID, o.Parts.Figure(), o.Of.Figure()))
	}
	values := sharesValues(strings.Join(shares, "; "))
	for i := range 4 {
		values[fmt.Sprint("terms", i+1)] = ""
	}
	for _, one := range strings.Split(text, ";") {
		owner, terms, _ := strings.Cut(strings.TrimSpace(one), "=")
		for i, o := range owners {
			if o.ID == owner {
				values[fmt.Sprint("terms", i+1)] = terms
			}
		}
	}
	return values
}

// formOutcome is what the form says, as the table says it.
func formOutcome(f *LoadForm, c entrytest.Case) string {
	for _, text := range c.Texts() {
		if l, known := f.Now.Line(text.Field); known && f.IsTyped(l.ID) && f.Now.messages[l.ID].State == model.Stop {
			return "refused " + l.ID
		}
	}
	for _, field := range f.Fields() {
		if field.State == model.Stop {
			break
		}
		if slices.ContainsFunc(f.Now.asked, func(q guard.Finding) bool { return q.Field == field.ID }) {
			return "asked " + field.ID
		}
	}
	for _, kind := range []struct {
		state model.State
		word  string
	}{{model.Stop, "stopped"}, {model.Warn, "warned"}} {
		for _, field := range f.Fields() {
			if field.State == kind.state && field.Note != "" {
				return fmt.Sprint(kind.word, " ", field.ID)
			}
		}
		if f.Preview().Margin.State == kind.state {
			return kind.word + " load"
		}
	}
	return "ok"
}
