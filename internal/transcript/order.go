package transcript

import (
	"regexp"
	"slices"
	"strings"
)

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

// sortedLines sorts the lines that fit, each run of them by itself. What is set in below a line
// moves with it.
func sortedLines(lines []string, fits *regexp.Regexp) []string {
	var out []string
	var run [][]string
	end := func() {
		slices.SortStableFunc(run, slices.Compare)
		out, run = append(out, slices.Concat(run...)...), nil
	}
	for i := 0; i < len(lines); {
		next := i + 1
		if !fits.MatchString(lines[i]) {
			end()
			out = append(out, lines[i])
			i = next
			continue
		}
		for next < len(lines) && setIn(lines[next], lines[i]) && !fits.MatchString(lines[next]) {
			next++
		}
		run = append(run, lines[i:next])
		i = next
	}
	end()
	return out
}

// setIn reports whether a line is set in below another; a rule above a sum is not.
func setIn(line, above string) bool { return indent(line) > indent(above) && squeezed(line) != "" }

func indent(line string) int { return len(line) - len(strings.TrimLeft(line, " ")) }
