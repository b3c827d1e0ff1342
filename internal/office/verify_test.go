package office_test

import (
	"strings"
	"testing"

	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse/housetest"
)

func TestCodeFindsItsTicket(t *testing.T) {
	s := housetest.New(t)
	id, _ := s.Ticket()
	s.Ticket()
	code, err := office.Code(ctx, s.Desk, s.Load(id))
	must(t, err)
	if len(code) != 12 {
		t.Fatalf("the code is %q", code)
	}
	l, err := office.TicketByCode(ctx, s.Desk, " "+strings.ToUpper(code)+" ")
	must(t, err)
	if l.ID != id {
		t.Errorf("code %s finds load %s, want %s", code, l.ID, id)
	}
	_, err = office.TicketByCode(ctx, s.Desk, "000000000000")
	refused(t, err, errortest.NotFound())
	_, err = office.TicketByCode(ctx, s.Desk, code[:4])
	refused(t, err, errortest.Invalid())
	if housetest.Amount("28000 lb").Cmp(s.Load(id).Settled.Figures["net"]) != 0 || quantity.Lb != s.Load(id).Settled.Figures["net"].Unit() {
		t.Error("the code's ticket has another net")
	}
}
