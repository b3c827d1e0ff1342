package grain

import (
	"slices"
	"strings"

	"tenthpoint/internal/law"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/tomlfile"
)

// subject finds the commodity that a file is about, or reports that there is
// none. What follows is then read for nothing, so that all mistakes are found.
func (t *Tables) subject(f *law.File, root *tomlfile.Table) *Commodity {
	if c := t.commodity(f.Subject); c != nil {
		return c
	}
	heading, _ := root.Table("law", true)
	heading.AddProblem("subject", message.New("law.subject is %q, which is no commodity here", f.Subject), message.New("Known here: %v.", t.knownIDs()))
	heading.IgnoreRest() // read by law already
	root.IgnoreRest()
	return nil
}

// readGrades reads the numbered grades of a commodity and the words added to
// them.
func (t *Tables) readGrades(f *law.File, root *tomlfile.Table) {
	c := t.subject(f, root)
	if c == nil {
		return
	}
	g, _ := root.Table("grades", true)
	table := &GradeTable{Names: g.Texts("names"), Below: g.Text("below"), NotJudged: g.OptionalText("not_judged"), Source: f.Citation}
	if len(table.Names) == 0 {
		g.AddProblem("names", message.New("grades.names names no grade"), message.New("List them, best first, such as names = [\"U.S. No. 1\", \"U.S. No. 2\"]."))
	}
	r := gradeReader{c: c, grades: len(table.Names)}
	for i, row := range g.Tables("limit") {
		row.SetTitle(message.New("place|limit %d", i+1))
		table.Limits = append(table.Limits, r.limit(row))
	}
	for i, row := range g.Tables("whole") {
		row.SetTitle(message.New("place|whole %d", i+1))
		table.Wholes = append(table.Wholes, r.whole(row))
	}
	for i, row := range g.Tables("sample") {
		row.SetTitle(message.New("place|sample %d", i+1))
		table.Sample = append(table.Sample, r.sample(row))
	}
	c.Grades, c.Special = table, nil
	for i, row := range root.Tables("special") {
		row.SetTitle(message.New("place|special %d", i+1))
		c.Special = append(c.Special, r.special(row))
	}
}

// gradeReader reads the rows of one commodity's table.
type gradeReader struct {
	c      *Commodity
	grades int
}

// factor reads the factor of a row; false when the commodity has no such factor, which has then
// been reported.
func (r gradeReader) factor(t *tomlfile.Table, key, id string) (Factor, bool) {
	f, ok := r.c.Factor(FactorID(id))
	if id != "" && !ok {
		t.AddProblem(key, message.New("%s has no factor %q", r.c.Name, id), message.New("Known factors: %v.", factorIDs(r.c)))
	}
	return f, ok
}

func factorIDs(c *Commodity) string {
	ids := make([]string, len(c.Factors))
	for i, f := range c.Factors {
		ids[i] = string(f.ID)
	}
	return strings.Join(ids, ", ")
}

func (r gradeReader) limit(t *tomlfile.Table) Limit {
	f, ok := r.factor(t, "factor", t.Text("factor"))
	l := Limit{Factor: f.ID, Bound: Bound(t.Choice("bound", string(Least), string(Most)))}
	figures := t.Texts("figures")
	if n := len(figures); n != 1 && n != r.grades {
		t.AddProblem("figures", message.New("%s: %d figures for %d grades", t.Name("figures"), n, r.grades), message.New("Write one for each grade, \"-\" for a grade without a limit, or one alone for all."))
	}
	for _, text := range figures {
		if ok {
			l.byGrade = append(l.byGrade, r.figure(t, "figures", f, text))
		}
	}
	if len(l.byGrade) == 0 {
		l.byGrade = []*quantity.Amount{nil}
	}
	l.checkOrder(t)
	if t.Has("only_with") {
		other, _ := t.Table("only_with", false)
		second := r.limit(other)
		l.and = &second
	}
	return l
}

// figure reads a cell; nil for a grade without a limit, or an invalid one.
func (r gradeReader) figure(t *tomlfile.Table, key string, f Factor, text string) *quantity.Amount {
	if text == "-" {
		return nil
	}
	a, err := f.figure(text)
	if err != nil {
		t.AddProblem(key, message.New("%s: %v", t.Name(key), err), message.New("Write the figure in digits, with its unit unless it is a count."))
		return nil
	}
	return &a
}

// figure reads a figure for the factor: with its unit, unless it is a count.
func (f Factor) figure(text string) (quantity.Amount, error) {
	if f.Unit != quantity.Count {
		if a, err := quantity.ParseAmount(text); err != nil {
			return a, err
		} else if a.Unit() != f.Unit {
			return a, message.Invalid.Errorf("%s is measured in %s, and %q is in %s", f.Name, f.Unit, text, a.Unit())
		}
	}
	return f.Field().Parse(text)
}

// checkOrder asks that a better grade is never the less strict.
func (l Limit) checkOrder(t *tomlfile.Table) {
	var before *quantity.Amount
	for _, at := range l.byGrade {
		if before != nil && at != nil && (l.Bound == Most && at.Less(*before) || l.Bound == Least && at.More(*before)) {
			t.AddProblem("figures", message.New("%s: %s comes after %s, which makes the lower grade the stricter", t.Name("figures"), at.Written(), before.Written()), message.New("Write the figures best grade first."))
			return
		}
		if at != nil {
			before = at
		}
	}
}

// sample reads the faults that make a lot sample grade, by yes-no factors.
func (r gradeReader) sample(t *tomlfile.Table) SampleRule {
	rule := SampleRule{Source: t.Text("citation")}
	for _, id := range t.Texts("present") {
		f, ok := r.factor(t, "present", id)
		if ok && !f.YesNo {
			t.AddProblem("present", message.New("%s is measured, it is not present or absent", f.Name), message.New("Write a limit for it."))
		}
		rule.Factors = append(rule.Factors, f.ID)
	}
	if len(rule.Factors) == 0 {
		t.AddProblem("present", message.New("%s names no fault", t.Name("present")), message.New("Write it like present = [\"musty\", \"sour\"]."))
	}
	return rule
}

func (r gradeReader) whole(t *tomlfile.Table) Whole {
	f, _ := r.factor(t, "factor", t.Text("factor"))
	w := Whole{Factor: f.ID, Complete: t.Bool("complete")}
	for _, id := range t.Texts("parts") {
		if part, ok := r.factor(t, "parts", id); ok {
			w.Parts = append(w.Parts, part.ID)
		}
	}
	if len(w.Parts) == 0 || slices.Contains(w.Parts, w.Factor) {
		t.AddProblem("parts", message.New("%s are none, or hold the whole itself", t.Name("parts")), message.New("Name the factors that the whole holds."))
	}
	return w
}
