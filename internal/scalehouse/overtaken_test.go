package scalehouse_test

import (
	"testing"

	"tenthpoint/internal/entry"
	"tenthpoint/internal/load"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/housetest"
)

// On a server an act may be run again, because another desk has written in between: it then does
// what it would have done at once.
func TestActsMayRunAgain(t *testing.T) {
	once, again := housetest.Lived(housetest.New(t)), housetest.Lived(housetest.NewOvertaken(t))
	if got, want := again.Contents(), once.Contents(); got != want {
		t.Errorf("a season whose acts ran again is another book:\n%s\nwant\n%s", got, want)
	}
	for _, s := range []*housetest.Scene{once, again} {
		details := housetest.Details()
		_, err := scalehouse.Enter(ctx, s.Desk, "", entry.Facts{Details: &details, Weighed: []load.Weighing{housetest.ScaleWeight(load.Gross, 52300)}})
		must(t, err)
	}
	if got, want := again.Contents(), once.Contents(); got != want {
		t.Errorf("a form entered again gave\n%s\nwant\n%s", got, want)
	}
	again.Verify()
}
