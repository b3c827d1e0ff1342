package transcript

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
)

// A rule is one paragraph of a list of differences that are meant.
type rule struct {
	in        *regexp.Regexp // command lines
	with      *regexp.Regexp // a line there must be today
	was       *regexp.Regexp
	mask      *regexp.Regexp
	added     *regexp.Regexp // lines that are new
	order     *regexp.Regexp // lines in any order
	refused   *regexp.Regexp // complaints that may be others
	figures   *regexp.Regexp // command lines of which only digits are compared
	kept      *regexp.Regexp // command lines of which all figures stay
	becomes   string
	elsewhere string // expression of the line that says it, with the groups of was
	replaces  bool
	why       string
	used      bool
}

// ruleFields are the keys of a paragraph.
var ruleFields = []string{"in", "with", "was", "now", "elsewhere", "mask", "order", "refused", "figures", "kept", "why"}

func newRule(fields map[string]string) (*rule, error) {
	has := func(name string) bool { _, found := fields[name]; return found }
	switch {
	case fields["why"] == "":
		return nil, fmt.Errorf("a difference needs its reason, why")
	case has("elsewhere") && (!has("was") || has("now")):
		return nil, fmt.Errorf("elsewhere says where a line of was is told now")
	}
	kinds := 0
	for _, one := range []bool{has("mask"), has("order"), has("refused"), has("figures"), has("kept"), has("was") || has("now")} {
		if one {
			kinds++
		}
	}
	if kinds != 1 {
		return nil, fmt.Errorf("a difference says one of mask, order, refused, figures and kept, or was and now or one of them")
	}
	r := &rule{why: fields["why"], becomes: fields["now"], elsewhere: fields["elsewhere"], replaces: has("was") && has("now")}
	into := map[string]**regexp.Regexp{
		"in": &r.in, "with": &r.with, "was": &r.was, "mask": &r.mask, "order": &r.order, "refused": &r.refused, "figures": &r.figures, "kept": &r.kept,
	}
	if !r.replaces {
		into["now"] = &r.added
	}
	for name, compiled := range into {
		if !has(name) {
			continue
		}
		var err error
		if *compiled, err = regexp.Compile(fields[name]); err != nil {
			return nil, err
		}
	}
	return r, nil
}

// holds reports whether a rule is about a command line and today's output for it.
func (r *rule) holds(command string, is []string) bool {
	return (r.in == nil || r.in.MatchString(command)) && (r.with == nil || slices.ContainsFunc(is, r.with.MatchString))
}

// alike compares two lines: with all rules applied to the older one, or else with any one, since a
// text may have two new wordings. A changed line is compared without its dot leaders, since a
// longer word leaves fewer dots.
func alike(was, is string, rules []*rule) bool {
	if was == is || changedBy(was, is, rules) {
		return true
	}
	return slices.ContainsFunc(rules, func(r *rule) bool { return changedBy(was, is, []*rule{r}) })
}

// changedBy reports whether rules turn one line into the other. A rule that replaces a text by
// itself allows only the filling to differ.
func changedBy(was, is string, rules []*rule) bool {
	changed := was
	var needed []*rule
	for _, r := range rules {
		w, i := r.applied(changed, is)
		if w != changed || i != is || r.replaces && r.was.MatchString(changed) {
			needed = append(needed, r)
		}
		changed, is = w, i
	}
	if len(needed) == 0 || squeezed(changed) != squeezed(is) {
		return false
	}
	for _, r := range needed {
		r.used = true
	}
	return true
}

// applied returns the older line and the newer one after a rule is applied.
func (r *rule) applied(was, is string) (string, string) {
	switch {
	case r.mask != nil:
		return r.mask.ReplaceAllString(was, "#"), r.mask.ReplaceAllString(is, "#")
	case r.replaces:
		if made := r.was.ReplaceAllString(was, r.becomes); digits(made) == digits(was) {
			return made, is
		}
	}
	return was, is
}

func added(line string, rules []*rule) bool {
	return use(rules, func(r *rule) bool { return r.added != nil && r.added.MatchString(line) })
}

func gone(line string, rules []*rule) bool {
	return digits(line) == "" && use(rules, func(r *rule) bool {
		return r.was != nil && !r.replaces && r.elsewhere == "" && r.was.MatchString(line)
	})
}

func use(rules []*rule, fits func(*rule) bool) bool {
	i := slices.IndexFunc(rules, fits)
	if i >= 0 {
		rules[i].used = true
	}
	return i >= 0
}

// filling are leaders, blanks and rules, never the minus of a figure.
var filling = regexp.MustCompile(`[ .]{2,}|-{2,}`)

func squeezed(line string) string { return strings.TrimSpace(filling.ReplaceAllString(line, " ")) }
