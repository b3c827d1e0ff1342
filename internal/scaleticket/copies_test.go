package scaleticket_test

import (
	"strings"
	"testing"

	"tenthpoint/internal/scaleticket"
	"tenthpoint/internal/tickettest"
)

// Each copy of the elevator's list says on itself whom it is for, and an elevator without a list
// prints one that says nothing.
func TestEachCopyNamesItself(t *testing.T) {
	ticket := tickettest.Corn(t)
	if copies := ticket.EachCopy(); len(copies) != 1 || copyLine(copies[0]) != "original" {
		t.Errorf("without a list there are %d copies, the first says %q", len(copies), copyLine(copies[0]))
	}
	ticket.House.CopiesFor = []string{"driver", "office", "Beech Land Trust"}
	for i, one := range ticket.EachCopy() {
		if got := copyLine(one); !strings.HasSuffix(got, ", "+ticket.House.CopiesFor[i]) || !strings.HasPrefix(got, "original") {
			t.Errorf("copy %d says %q", i+1, got)
		}
	}
	ticket.House.Language = "fr"
	if got := copyLine(ticket.EachCopy()[0]); strings.Contains(got, "driver") {
		t.Errorf("in French the first copy says %q", got)
	}
	if got := copyLine(ticket.EachCopy()[2]); !strings.HasSuffix(got, "Beech Land Trust") {
		t.Errorf("in French the last copy says %q", got)
	}
}

func copyLine(t scaleticket.Ticket) string {
	s, _ := scaleticket.Compose(t).Section("number")
	for _, l := range s.Lines {
		if l.Field == "copy" {
			return l.Value
		}
	}
	return ""
}
