package transcript

import (
	"bufio"
	"fmt"
	"io"
	"regexp"
	"slices"
	"strings"
	"sync"
)

// Allowed are the differences that are meant. Its text is paragraphs of
//
//	in: ^tenth show        which command lines; without it, all
//	was: price later       what the older program said, a regular expression
//	now: price not set     what is said in its place, $1 a group of was
//	why: the reason
//
// Without was, now is a regular expression of lines that are new; without now,
// was is one of lines that are gone. Neither takes a figure away: a text with
// digits may only be replaced by one with the same digits, and a line that is
// gone has none. A paragraph with mask instead of both is a regular expression
// of what is not compared, for codes that are made of a hash. One with order is
// of lines that may come in another order among themselves, and one with refused
// of the first line of a complaint in whose place another may be given, if both
// programs refuse with the same exit status. One with figures is of command lines
// of whose output only the digits are compared, in their order, for a book in a
// language whose words were revised.
type Allowed struct {
	rules []*rule
	mutex sync.Mutex
}

type rule struct {
	in, was, mask *regexp.Regexp
	added         *regexp.Regexp // lines that are new
	order         *regexp.Regexp // lines in any order
	refused       *regexp.Regexp // complaints that may be others
	figures       *regexp.Regexp // command lines of which only digits are compared
	becomes       string
	replaces      bool
	why           string
	used          bool
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
		case !found || !slices.Contains([]string{"in", "was", "now", "mask", "order", "refused", "figures", "why"}, name):
			return nil, fmt.Errorf("line %d: %q begins with none of in, was, now, mask, order, refused, figures and why", n, line)
		default:
			fields[name] = strings.TrimSpace(value)
		}
	}
	if err := end(); err != nil {
		return nil, err
	}
	return a, lines.Err()
}

func newRule(fields map[string]string) (*rule, error) {
	was, hasWas := fields["was"]
	now, hasNow := fields["now"]
	mask, hasMask := fields["mask"]
	order, hasOrder := fields["order"]
	refused, hasRefused := fields["refused"]
	figures, hasFigures := fields["figures"]
	if fields["why"] == "" {
		return nil, fmt.Errorf("a difference needs its reason, why")
	}
	kinds := 0
	for _, has := range []bool{hasMask, hasOrder, hasRefused, hasFigures, hasWas || hasNow} {
		if has {
			kinds++
		}
	}
	if kinds != 1 {
		return nil, fmt.Errorf("a difference says one of mask, order, refused and figures, or was and now or one of them")
	}
	r := &rule{why: fields["why"], becomes: now, replaces: hasWas && hasNow}
	var err error
	compile := func(into **regexp.Regexp, text string, wanted bool) {
		if wanted && err == nil {
			*into, err = regexp.Compile(text)
		}
	}
	compile(&r.in, fields["in"], true)
	compile(&r.mask, mask, hasMask)
	compile(&r.order, order, hasOrder)
	compile(&r.refused, refused, hasRefused)
	compile(&r.figures, figures, hasFigures)
	compile(&r.was, was, hasWas)
	compile(&r.added, now, hasNow && !hasWas)
	return r, err
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
	rules := slices.DeleteFunc(slices.Clone(a.rules), func(r *rule) bool { return !r.in.MatchString(command) })
	was, is = reordered(was, is, rules)
	if use(rules, func(r *rule) bool { return r.figures != nil && r.figures.MatchString(command) }) {
		return firstFigures(was, is, rules)
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

// firstFigures compares the digits of all lines, those left out that may be new.
func firstFigures(was, is []string, rules []*rule) (before, after string, differ bool) {
	kept := slices.DeleteFunc(slices.Clone(is), func(line string) bool { return added(line, rules) })
	w, i := digitsOfAll(was, rules), digitsOfAll(kept, rules)
	if w == i {
		return "", "", false
	}
	same := 0
	for same < min(len(w), len(i)) && w[same] == i[same] {
		same++
	}
	from := max(same-20, 0)
	return w[from:min(same+20, len(w))], i[from:min(same+20, len(i))], true
}

// digitsOfAll returns the digits of lines, without masked parts.
func digitsOfAll(lines []string, rules []*rule) string {
	var b strings.Builder
	for _, line := range lines {
		for _, r := range rules {
			if r.mask != nil {
				line = r.mask.ReplaceAllString(line, "#")
			}
		}
		b.WriteString(digits(line))
	}
	return b.String()
}

// reordered sorts the lines that may come in another order, where there are as
// many of them on both sides.
func reordered(was, is []string, rules []*rule) (sortedWas, sortedIs []string) {
	for _, r := range rules {
		if r.order == nil {
			continue
		}
		w, i := sortedLines(was, r.order), sortedLines(is, r.order)
		if !slices.Equal(w, was) || !slices.Equal(i, is) {
			r.used = true
		}
		was, is = w, i
	}
	return was, is
}

// sortedLines sorts the lines that fit among the places they have.
func sortedLines(lines []string, fits *regexp.Regexp) []string {
	out := slices.Clone(lines)
	var places []int
	var some []string
	for i, line := range lines {
		if fits.MatchString(line) {
			places, some = append(places, i), append(some, line)
		}
	}
	slices.Sort(some)
	for i, place := range places {
		out[place] = some[i]
	}
	return out
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
		return r.refused != nil && r.in.MatchString(before.Line()) && r.refused.MatchString(first)
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
		return r.was != nil && !r.replaces && r.was.MatchString(line)
	})
}

func use(rules []*rule, fits func(*rule) bool) bool {
	i := slices.IndexFunc(rules, fits)
	if i >= 0 {
		rules[i].used = true
	}
	return i >= 0
}

// digits are the digits of a line, in order.
func digits(line string) string {
	return strings.Map(func(c rune) rune {
		if c < '0' || c > '9' {
			return -1
		}
		return c
	}, line)
}

var filling = regexp.MustCompile(`[ .\-]{2,}`)

func squeezed(line string) string { return strings.TrimSpace(filling.ReplaceAllString(line, " ")) }
