package scaleticket

import (
	"fmt"

	"tenthpoint/internal/load"
)

// marks are the words that must be seen before anything else is read, in the
// order of their weight.
func marks(t *facts) []string {
	var words []string
	for _, mark := range []struct {
		stands bool
		word   string
	}{
		{t.isExample(), t.w.MarkExample},
		{t.l.Phase == load.Void, t.w.MarkVoid},
		{t.l.Reissue.By != 0, fmt.Sprintf(t.w.MarkReissued, t.l.Reissue.By)},
		{t.isRefused(), t.w.MarkRefused},
		{t.l.Phase == load.Corrected, fmt.Sprintf(t.w.MarkCorrected, t.l.Ended.By)},
		{t.l.Corrects != 0, fmt.Sprintf(t.w.MarkCorrects, t.l.Corrects)},
		{t.l.Reissues != 0, fmt.Sprintf(t.w.MarkInPlaceOf, t.l.Reissues)},
		{t.isDraft() && !t.isRefused(), t.w.MarkDraft},
		{!t.isDraft() && t.Copy > 0, fmt.Sprintf(t.w.MarkReprint, t.Copy)},
		{t.Owner != 0, t.w.MarkOneShare},
		{t.l.Manual(), t.w.MarkManual},
		{len(t.l.Drafts()) > 1, t.w.MarkSplit},
	} {
		if mark.stands {
			words = append(words, mark.word)
		}
	}
	return words
}

// stamp is the word set across paper that must not be taken for a ticket in
// force.
func stamp(t *facts) string {
	switch {
	case t.l.Phase == load.Void:
		return t.w.MarkVoid
	case t.isRefused():
		return t.w.MarkRefused
	case t.l.Phase == load.Corrected:
		return fmt.Sprintf(t.w.MarkCorrected, t.l.Ended.By)
	case t.isDraft():
		return t.w.MarkDraft
	}
	return ""
}
