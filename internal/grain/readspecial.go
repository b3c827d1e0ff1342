package grain

import (
	"strings"

	"tenthpoint/internal/message"
	"tenthpoint/internal/tomlfile"
)

// special reads a word added to a grade. Each text of "any" is a way to earn it:
// conditions such as "smut over 5" and "smut-odor present", joined by " and ".
func (r gradeReader) special(t *tomlfile.Table) SpecialGrade {
	s := SpecialGrade{Name: t.Text("name"), Source: t.Text("citation")}
	if word := t.OptionalText("word"); word != "" {
		if f, ok := r.factor(t, "word", word); ok {
			s.Word = f.ID
		}
	}
	for _, way := range t.Texts("any") {
		var all []Condition
		for _, text := range strings.Split(way, " and ") {
			if c, ok := r.condition(t, strings.TrimSpace(text)); ok {
				all = append(all, c)
			}
		}
		s.Any = append(s.Any, all)
	}
	if len(s.Any) == 0 {
		t.AddProblem("any", message.New("%s names no way to earn the word", t.Name("any")), message.Words("Write it like any = [\"ergot over 0.05 %\"]."))
	}
	return s
}

// condition reads "ergot over 0.05 %" or "smut-odor present".
func (r gradeReader) condition(t *tomlfile.Table, text string) (Condition, bool) {
	id, rest, _ := strings.Cut(text, " ")
	f, ok := r.factor(t, "any", id)
	if !ok {
		return Condition{}, false
	}
	if rest == "present" && f.YesNo {
		return Condition{Factor: f.ID, Relation: AtLeast, Figure: Yes}, true
	}
	for _, relation := range []Relation{Over, AtLeast, AtMost, Under} {
		figure, is := strings.CutPrefix(rest, string(relation)+" ")
		if !is || f.YesNo {
			continue
		}
		if a := r.figure(t, "any", f, figure); a != nil {
			return Condition{Factor: f.ID, Relation: relation, Figure: *a}, true
		}
		return Condition{}, false
	}
	t.AddProblem("any", message.New("%s: %q is no condition", t.Name("any"), text), message.New("Write a factor, then over, at least, at most or under and a figure; or present, for what is there or is not."))
	return Condition{}, false
}
