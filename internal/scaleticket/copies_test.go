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

// The copy that stays in the truck says nothing of prices and money, unless the house lets it; it has
// all else.
func TestDriversCopyHasNoMoney(t *testing.T) {
	for name, ticket := range map[string]scaleticket.Ticket{
		"corn": tickettest.Corn(t), "shares": tickettest.Shares(t), "landlord": tickettest.Landlord(t), "tonnes": tickettest.Tonnes(t),
	} {
		whole := texts(ticket)
		ticket.For = "driver"
		if got := texts(ticket); strings.Contains(got, "$") || !strings.Contains(whole, "$") {
			t.Errorf("%s: the driver reads of money:\n%s", name, got)
		}
		if q, ok := scaleticket.QR(scaleticket.Compose(ticket)); ok && q.Code != nil && !q.Code.NoMoney {
			t.Errorf("%s: the square of the driver has money", name)
		}
		ticket.House.DriverMoney = true
		if got := texts(ticket); got != whole {
			t.Errorf("%s: a driver who may read of money reads something else", name)
		}
	}
}

// texts is every text of a slip.
func texts(t scaleticket.Ticket) string {
	t.Copy = 0
	var b strings.Builder
	for _, s := range scaleticket.Compose(t).Sections {
		if s.Title == "" && len(s.Lines) > 0 && s.Lines[0].Field == "copy" {
			continue
		}
		for _, l := range s.Lines {
			if l.Field != "copy" {
				b.WriteString(l.Label + " " + l.Value + " " + strings.Join(l.Notes, " ") + "\n")
			}
		}
	}
	return b.String()
}
