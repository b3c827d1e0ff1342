package slip

import (
	"fmt"
	"strings"

	"tenthpoint/internal/settle"
	"tenthpoint/internal/working"
)

// working is every step of the settlement in small print, so that each figure
// can be redone from the paper with a pocket calculator.
func (c *composer) working() {
	c.open("working", c.w.Working, SmallPrint)
	if c.weightsOnly != nil {
		c.weighedWorking()
		return
	}
	if c.s == nil {
		c.put(Line{Kind: Sentence, Label: c.w.NothingWorked})
		return
	}
	c.put(Line{Kind: Sentence, Label: c.workedUnder()})
	section := ""
	for _, step := range c.s.Sheet.Steps() {
		if c.isForeign(step) {
			continue
		}
		if step.Section() != section {
			section = step.Section()
			c.put(Line{Kind: Heading, Label: c.w.say(section)})
		}
		c.put(c.stepLine(step))
	}
}

// workedUnder names the edition in full: the steps below name its rows only.
func (c *composer) workedUnder() string {
	e := c.s.Edition
	return fmt.Sprintf("%s %s, %s, %s, SHA-256 %s", c.w.WorkedUnder, e.ID, e.Title, c.w.say(e.Period()), e.Hash)
}

func (c *composer) stepLine(step *working.Step) Line {
	value := step.PrintedIn(c.w.Say)
	if step.Kind() == working.NotApplied {
		value = c.w.NotApplied
	}
	return Line{Label: c.w.say(step.Label()), Value: value, Notes: step.ExplainIn(c.sayHere)}
}

// sayHere says a remark of the working without naming the edition, which stands
// over all of it.
func (c *composer) sayHere(english string) string {
	return c.w.say(c.l.Details.Disposition.Remark(strings.TrimPrefix(english, c.s.Edition.ID+": ")))
}

// isForeign reports whether a step is another owner's on one owner's slip.
func (c *composer) isForeign(step *working.Step) bool {
	owner, owned := settle.OwnerOf(step.ID())
	return c.Owner != 0 && owned && owner != c.Owner
}
