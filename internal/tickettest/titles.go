package tickettest

import (
	"testing"

	"tenthpoint/internal/load"
	"tenthpoint/internal/scaleticket"
	"tenthpoint/internal/title"
)

// held makes a ticket of the corn without a price, held under terms.
func held(terms title.Terms) func(testing.TB) scaleticket.Ticket {
	return func(t testing.TB) scaleticket.Ticket {
		d := CornDetails()
		d.Terms, d.Price, d.PriceSource = terms, nil, ""
		return Tell(t, d).Truck(Lb(80120), Lb(27820)).Samples(WetSample()).issues(1051).Ticket(ExampleElevator(), edition(t, "corn"))
	}
}

// apartTicket is a load of three owners: the tenant sells, one landlord stores, the
// other has a delayed-price contract that is not signed yet.
func apartTicket(t testing.TB) scaleticket.Ticket {
	d := sharedDetails()
	d.Shares[1].Own = &load.Deal{Terms: title.Terms{Under: title.OpenStorage}}
	d.Shares[2].Own = &load.Deal{Terms: title.Terms{Whose: title.Depositors, Under: title.DelayedPrice, No: "D-7"}}
	return Tell(t, d).Truck(Lb(80120), Lb(27820)).Samples(WetSample()).issues(1056).Ticket(ExampleElevator(), edition(t, "corn"))
}

// apartLandlord is the slip of the landlord who stores.
func apartLandlord(t testing.TB) scaleticket.Ticket {
	ticket := apartTicket(t)
	ticket.Owner = 2
	return ticket
}
