package moisture

import (
	"tenthpoint/internal/law"
	"tenthpoint/internal/message"
	"tenthpoint/internal/tomlfile"
)

// Retention is the time a sample is kept for a dispute.
type Retention struct {
	ID     string `json:"id"`
	Name   string `json:"name"`
	Days   int    `json:"days,string"`
	Source string `json:"source"`
}

// OfHouse is the id of the days a house has set itself, which no law says.
const OfHouse = "house"

// IsByLaw reports whether the rule is a published one.
func (r Retention) IsByLaw() bool { return r.ID != OfHouse }

// Stated says the rule; a published one is to be confirmed.
func (r Retention) Stated() message.Text {
	said := message.New("Samples are kept %d days: %s.", r.Days, r.Name)
	if !r.IsByLaw() {
		return said
	}
	return law.ToConfirm(said)
}

// KindRetention is the kind of file with these rules.
const KindRetention = "retention"

// ReadRetentions reads a file of that kind. The error names every mistake in it.
func ReadRetentions(f *law.File) (out []Retention, err error) {
	err = f.Read(func(body *tomlfile.Table) {
		for i, t := range body.Tables("rule") {
			t.SetTitle(message.New("place|rule %d", i+1))
			out = append(out, Retention{ID: t.Text("id"), Name: t.Text("name"), Days: law.Days(t, "days"), Source: t.Text("citation")})
		}
	})
	return out, err
}

// Retentions are the published rules of a law; an elevator may set its own.
func Retentions(l law.Law) ([]Retention, error) {
	var out []Retention
	for _, f := range l.OfKind(KindRetention) {
		rules, err := ReadRetentions(f)
		if err != nil {
			return nil, err
		}
		out = append(out, rules...)
	}
	return out, nil
}

// RetentionByID finds a published rule; false when the law has none of the id.
func RetentionByID(l law.Law, id string) (Retention, bool) {
	rules, _ := Retentions(l) // errors were reported when it was loaded
	for _, r := range rules {
		if r.ID == id {
			return r, true
		}
	}
	return Retention{}, false
}
