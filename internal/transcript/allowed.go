package transcript

import (
	"bufio"
	"fmt"
	"io"
	"slices"
	"strings"
	"sync"
)

// Allowed are the differences that are meant. Its text is paragraphs of
//
//	in: ^tenth show        which command lines; without it, all
//	was: price later       what the older program said, a regular expression
//	now: price not set     what is said in its place, $1 a group of was
//	with: ^Held as         a line that today's output has; without it, any output
//	why: the reason
//
// Without was, now is a regular expression of lines that are new; without now, was is one of lines
// that are gone. Neither takes a figure away: a text with digits may only be replaced by one with the
// same digits, and a line that is gone has none, unless elsewhere is a regular expression of the line
// that tells the same today, \1 a group of was. A paragraph with one of these instead says what is
// compared less exactly, by a regular expression:
//
//	mask      texts that are not compared, for codes that are made of a hash
//	order     lines that may come in another order where they follow each other, with what is set
//	          in below them
//	refused   the first line of a complaint in whose place another may be given, if both programs
//	          refuse with the same exit status
//	figures   command lines of whose output only the digits are compared, in their order, for a
//	          language whose words were revised
//	kept      command lines of whose output every figure must still be there, in any order and
//	          among others
type Allowed struct {
	rules []*rule
	mutex sync.Mutex
}

// ReadAllowed reads a list of differences that are meant.
func ReadAllowed(r io.Reader) (*Allowed, error) {
	a, fields, n := &Allowed{}, map[string]string{}, 0
	lines := bufio.NewScanner(r)
	end := func() error {
		if len(fields) == 0 {
			return nil
		}
		made, err := newRule(fields)
		if err != nil {
			return fmt.Errorf("paragraph before line %d: %w", n+1, err)
		}
		a.rules, fields = append(a.rules, made), map[string]string{}
		return nil
	}
	for lines.Scan() {
		n++
		line := lines.Text()
		name, value, found := strings.Cut(line, ":")
		switch {
		case strings.HasPrefix(line, "#"):
		case strings.TrimSpace(line) == "":
			if err := end(); err != nil {
				return nil, err
			}
		case !found || !slices.Contains(ruleFields, name):
			return nil, fmt.Errorf("line %d: %q begins with none of %s", n, line, strings.Join(ruleFields, ", "))
		default:
			fields[name] = strings.TrimSpace(value)
		}
	}
	if err := end(); err != nil {
		return nil, err
	}
	return a, lines.Err()
}

// Masks reports whether any rule excludes something from the comparison.
func (a *Allowed) Masks() bool {
	return slices.ContainsFunc(a.rules, func(r *rule) bool { return r.mask != nil })
}

// Join takes another list's rules in as well.
func (a *Allowed) Join(other *Allowed) { a.rules = append(a.rules, other.rules...) }

// Unused are the reasons of rules that nothing needed so far.
func (a *Allowed) Unused() []string {
	a.mutex.Lock()
	defer a.mutex.Unlock()
	var out []string
	for _, r := range a.rules {
		if !r.used {
			out = append(out, r.why)
		}
	}
	return out
}

// first finds the first lines that differ and are not meant to.
func (a *Allowed) first(command string, was, is []string) (before, after string, differ bool) {
	a.mutex.Lock()
	defer a.mutex.Unlock()
	rules := slices.DeleteFunc(slices.Clone(a.rules), func(r *rule) bool { return !r.holds(command, is) })
	was = withoutToldElsewhere(was, is, rules)
	was, is = reordered(was, is, rules)
	if use(rules, func(r *rule) bool { return r.figures != nil && r.figures.MatchString(command) }) {
		return firstFigures(was, is, rules)
	}
	if use(rules, func(r *rule) bool { return r.kept != nil && r.kept.MatchString(command) }) {
		return firstLost(was, is, rules)
	}
	loose := reworded(was, rules)
	i, j := 0, 0
	for i < len(was) || j < len(is) {
		switch {
		case i < len(was) && j < len(is) && (alike(was[i], is[j], rules) || loose && squeezed(was[i]) == squeezed(is[j])):
			i, j = i+1, j+1
		case j < len(is) && added(is[j], rules):
			j++
		case i < len(was) && gone(was[i], rules):
			i++
		default:
			return at(was, i), at(is, j), true
		}
	}
	return "", "", false
}

// otherComplaint reports whether a refusal may be worded differently.
func (a *Allowed) otherComplaint(before, after Entry) bool {
	if before.Status == 0 || before.Status != after.Status || after.Err == "" {
		return false
	}
	a.mutex.Lock()
	defer a.mutex.Unlock()
	first, _, _ := strings.Cut(before.Err, "\n")
	return use(a.rules, func(r *rule) bool {
		return r.refused != nil && r.holds(before.Line(), lines(after.Err)) && r.refused.MatchString(first)
	})
}

// reworded reports whether a rule replaces text in any of the lines. Then columns of a table may
// have another width, also in unchanged lines.
func reworded(lines []string, rules []*rule) bool {
	return slices.ContainsFunc(rules, func(r *rule) bool {
		return r.replaces && slices.ContainsFunc(lines, r.was.MatchString)
	})
}

func at(lines []string, i int) string {
	if i >= len(lines) {
		return "(nothing more)"
	}
	return lines[i]
}
