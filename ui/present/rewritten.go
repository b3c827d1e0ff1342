package present

import (
	"context"
	"maps"
	"slices"
	"strings"
	"tenthpoint/ui/model"
)

// SayRewritten warns of rates whose text was changed under their id since
// tickets were settled under them.
func SayRewritten(f *Frame) {
	ids, err := f.Desk.Rewritten(context.Background())
	switch {
	case err != nil:
		f.Fail(err)
	case len(ids) > 0:
		f.Say(model.Warn, Say("The text of %s was changed since tickets were settled under it. The screen of rates says more.",
			strings.Join(slices.Sorted(maps.Keys(ids)), ", ")))
	}
}
