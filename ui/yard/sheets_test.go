package yard

import (
	"strings"
	"testing"

	"tenthpoint/ui/session/sessiontest"
)

// Shares must make the whole; then they are parts of the load and of its slip.
func TestSharesOfALoad(t *testing.T) {
	r := sessiontest.DemoRoom(t, 0)
	f := corn(r)
	sharesSheet{f}.ask()
	for _, tt := range []struct {
		values map[string]string
		field  string
	}{
		{map[string]string{"owner1": "123", "share1": "1/3"}, "share1"},
		{map[string]string{"owner1": "123", "share1": ""}, "share1"},
		{map[string]string{"owner1": "123", "share1": "1/3", "share2": "2/3"}, "owner2"},
		{map[string]string{"owner1": "123", "share1": "1/3", "owner2": "106", "share2": "1/2"}, "share1"},
	} {
		if wrong := r.Answer(tt.values); wrong[tt.field] == "" {
			t.Errorf("%v was taken: %v", tt.values, wrong)
		}
	}
	if wrong := r.Answer(map[string]string{"owner1": "123", "share1": "1/3", "owner2": "106", "share2": "2/3"}); wrong != nil {
		t.Fatal(wrong)
	}
	shares := f.inBook().Details.Shares
	if len(shares) != 2 || shares[1].Name == "" || len(f.Now.settlement.Shares) != 2 {
		t.Errorf("the load has %+v", shares)
	}
	if got := sessiontest.FieldOf(t, f, "grower").Reading; !strings.Contains(got, "1/3") || !strings.Contains(got, "2/3") {
		t.Errorf("beside the grower stands %q", got)
	}
}
