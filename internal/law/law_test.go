package law

import (
	"flag"
	"os"
	"testing"
)

var freeze = flag.Bool("freeze", false, "write the list of the first law; done once")

// The first law never changes: tickets of old books are read by it.
func TestFirstLawIsFrozen(t *testing.T) {
	if *freeze {
		s, problems := NewSet(Shipped()...)
		if err := problems.Err(); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile("../../schedules/law/first.txt", []byte(newLaw(s.files).Manifest()), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	if n := len(First().Files()); n < 20 {
		t.Errorf("the first law has %d files", n)
	}
}
