package paperview

import (
	"cmp"
	"slices"
	"strings"

	"tenthpoint/internal/paper"
	"tenthpoint/ui/model"
)

// text is the paper in front as text, to be copied.
func (v *SlipView) text() string {
	if pages := v.InFront(); pages != nil {
		return textOf(*pages)
	}
	return model.TextOfCard(v.card.lines)
}

// textOf are the pages line by line: what stands on one baseline, from left to right between tabs.
func textOf(l paper.Layout) string {
	var b strings.Builder
	for _, page := range l.Pages {
		runs := slices.Clone(page.Runs)
		slices.SortStableFunc(runs, func(one, other paper.Run) int {
			return cmp.Or(cmp.Compare(one.At.Y, other.At.Y), cmp.Compare(one.At.X, other.At.X))
		})
		for i, run := range runs {
			if i > 0 {
				b.WriteString(between(runs[i-1], run))
			}
			b.WriteString(run.Text)
		}
		b.WriteByte('\n')
	}
	return b.String()
}

func between(one, other paper.Run) string {
	if one.At.Y == other.At.Y {
		return "\t"
	}
	return "\n"
}
