package transcript

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// withoutToldElsewhere leaves out the lines that today's output tells in another place or form.
func withoutToldElsewhere(was, is []string, rules []*rule) []string {
	return slices.DeleteFunc(slices.Clone(was), func(line string) bool {
		return use(rules, func(r *rule) bool { return r.tellsElsewhere(line, is) })
	})
}

// tellsElsewhere reports whether today's lines hold the one that a rule names for an older line.
func (r *rule) tellsElsewhere(line string, is []string) bool {
	if r.elsewhere == "" {
		return false
	}
	groups := r.was.FindStringSubmatch(line)
	if groups == nil {
		return false
	}
	wanted, err := regexp.Compile(filledIn(r.elsewhere, groups))
	return err == nil && slices.ContainsFunc(is, wanted.MatchString)
}

// filledIn puts what the groups of was found, taken literally, into the expression of elsewhere.
func filledIn(elsewhere string, groups []string) string {
	for i, group := range groups[1:] {
		elsewhere = strings.ReplaceAll(elsewhere, `\`+strconv.Itoa(i+1), regexp.QuoteMeta(group))
	}
	return elsewhere
}
