package publishing

import (
	"context"
	"slices"

	"tenthpoint/internal/digest"
	"tenthpoint/internal/message"
	"tenthpoint/internal/published"
	"tenthpoint/internal/scalehouse"
)

// Follow has a site take over what a head office publishes, whose key somebody compared by its
// fingerprint. It is a manager's act. Following another office, or the same by another key, begins
// anew from its first fact; what was taken over stays until then.
func Follow(ctx context.Context, d *scalehouse.Desk, office, fingerprint string) error {
	if err := d.MayManage("Following a head office"); err != nil {
		return err
	}
	f := published.Following{Office: office, Fingerprint: fingerprint}
	return scalehouse.SetRecord(ctx, d, theOffice, f)
}

// theOffice is the id of the record: a site has one head office.
const theOffice = "head office"

// Receive takes over what the office published since the last time, and the texts of its editions by
// hash. All of it is taken over or nothing.
func Receive(ctx context.Context, d *scalehouse.Desk, was, next published.Following, news []published.Received, texts map[string]string) error {
	return d.Batch(ctx, func(w *scalehouse.Batch) error {
		now, err := scalehouse.RecordsIn[published.Following](w)
		if err != nil {
			return err
		}
		if !slices.ContainsFunc(now, func(f published.Following) bool { return f.Head() == was.Head() && f.Office == was.Office }) {
			return message.WrongPhase.Errorf("another desk took over what the head office published meanwhile. Fetch again")
		}
		for _, r := range news {
			if err := keepText(w, r, texts); err != nil {
				return err
			}
			if err := scalehouse.SetRecord(ctx, w, r.ID(), r); err != nil {
				return err
			}
		}
		return scalehouse.SetRecord(ctx, w, theOffice, next)
	})
}

// keepText keeps the text of an edition that holds from now on.
func keepText(w *scalehouse.Batch, r published.Received, texts map[string]string) error {
	if r.Edition == nil || r.Withdrawn != "" {
		return nil
	}
	text, there := texts[r.Edition.Hash]
	if !there || digest.Of(text) != r.Edition.Hash {
		return message.Invalid.Errorf("the text of edition %s did not come as the head office published it; nothing was taken over", r.Edition.ID)
	}
	return scalehouse.KeepIn(w, r.Edition.ID, r.Edition.Hash, []byte(text))
}
