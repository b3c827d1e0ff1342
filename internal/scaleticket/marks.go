package scaleticket

import (
	"fmt"

	"tenthpoint/internal/load"
)

// marks are the words that must be seen before anything else is read, in the
// order of their weight.
func (c *composer) marks() {
	c.mark(c.isExample(), c.w.MarkExample)
	c.mark(c.l.Phase == load.Void, c.w.MarkVoid)
	c.mark(c.l.Again.By != 0, fmt.Sprintf(c.w.MarkReissued, c.l.Again.By))
	c.mark(c.isRefused(), c.w.MarkRefused)
	c.mark(c.l.Phase == load.Corrected, fmt.Sprintf(c.w.MarkCorrected, c.l.Ended.By))
	c.mark(c.l.Corrects != 0, fmt.Sprintf(c.w.MarkCorrects, c.l.Corrects))
	c.mark(c.l.Reissues != 0, fmt.Sprintf(c.w.MarkInPlaceOf, c.l.Reissues))
	c.mark(c.isDraft() && !c.isRefused(), c.w.MarkDraft)
	c.mark(!c.isDraft() && c.Copy > 0, fmt.Sprintf(c.w.MarkReprint, c.Copy))
	c.mark(c.Owner != 0, c.w.MarkOneShare)
	c.mark(c.l.Manual(), c.w.MarkManual)
	c.mark(len(c.l.Drafts()) > 1, c.w.MarkSplit)
	c.doc.Stamp = c.stamp()
}

func (c *composer) mark(stands bool, word string) {
	if stands {
		c.doc.Marks = append(c.doc.Marks, word)
	}
}

// stamp is the word set across paper that must not be taken for a ticket in
// force.
func (c *composer) stamp() string {
	switch {
	case c.l.Phase == load.Void:
		return c.w.MarkVoid
	case c.isRefused():
		return c.w.MarkRefused
	case c.l.Phase == load.Corrected:
		return fmt.Sprintf(c.w.MarkCorrected, c.l.Ended.By)
	case c.isDraft():
		return c.w.MarkDraft
	}
	return ""
}
