package scalehouse_test

import (
	"strings"
	"testing"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse/housetest"
	"tenthpoint/internal/title"
)

// illegal are moves that are not allowed, each with a part of the sentence that
// says so. Scene brings about what makes it illegal; move is the move.
var illegal = []struct {
	name  string
	scene func(s *scene) (id string, number int64)
	move  func(s *scene, id string, number int64) error
	want  string
}{
	// Loads that are not there, or not whole.
	{"weigh an unknown load", nothing, weighGross, "there is no load L1 in this book"},
	{"issue an unknown load", nothing, issue, "there is no load L1 in this book"},
	{"issue without a tare", arrived, issue, "No tare yet: weigh the empty truck, or use its stored tare."},
	{"issue without a sample", weighed, issue, "No moisture yet: test the sample."},
	{"print an unknown ticket", nothing, printed, "there is no ticket 0 in this book"},
	{"void an unknown ticket", asManager(nothing), void("a trial"), "there is no ticket 0 in this book"},
	{"correct an unknown ticket", asManager(nothing), correct("a trial"), "there is no ticket 0 in this book"},

	// Weights that cannot be.
	{"a weight of zero", arrived, weigh(load.Weighing{Which: load.Tare, Source: load.FromScale, Weight: quantity.Zero(quantity.Lb)}), "the weight is 0 lb"},
	{"a weight below zero", arrived, weigh(housetest.ScaleWeight(load.Tare, -24300)), "the weight is -24,300 lb"},
	{"a weight between divisions", arrived, weigh(housetest.ScaleWeight(load.Tare, 24310)), "24,310 lb is not a whole number of divisions of 20 lb: it lies between 24,300 lb and 24,320 lb"},
	{"a weight over the capacity", arrived, weigh(housetest.ScaleWeight(load.Gross, 126020)), "126,020 lb is over 126,000 lb, which is 105 % of the capacity of scale 1"},
	{"a weight in another unit", arrived, weigh(load.Weighing{Which: load.Tare, Source: load.FromScale, Weight: quantity.Int(11000, quantity.Kg)}), "11,000 kg is not a weight from scale 1, which weighs in lb"},
	{"a weight from no scale of ours", arrived, weigh(load.Weighing{Which: load.Tare, Source: load.FromScale, Scale: "9", Weight: quantity.Int(24300, quantity.Lb)}), "there is no scale 9 at this elevator"},
	{"a weight that is neither gross nor tare", arrived, weigh(housetest.ScaleWeight("net", 28000)), `a weight is gross or tare, not "net"`},
	{"a weight by hand without a reason", arrived, weigh(load.Weighing{Which: load.Tare, Source: load.ByHand, Weight: quantity.Int(24300, quantity.Lb), Reason: "  "}), "a weight is typed by hand only with a reason"},
	{"a stored gross", arrived, weigh(load.Weighing{Which: load.Gross, Source: load.StoredTare, Weight: quantity.Int(52300, quantity.Lb), Taken: quantity.MustDate("2026-09-20")}), "only a tare can be a stored one"},
	{"a stored tare of no day", arrived, weigh(load.Weighing{Which: load.Tare, Source: load.StoredTare, Weight: quantity.Int(24300, quantity.Lb)}), "a stored tare says on which day it was weighed"},
	{"issue with the tare above the gross", swapped, issue, "Net would be -28,000 lb (gross 24,300 - tare 52,300). Weigh again or swap the two."},

	// Samples that cannot be.
	{"moisture of zero", arrived, sample("0"), "moisture is 0 %; it lies above 0 % and below 100 %"},
	{"moisture of a hundred", arrived, sample("100"), "moisture is 100 %"},
	{"moisture below zero", arrived, sample("-3"), "moisture is -3 %"},
	{"a factor the grain has not", withFactor("dockage", "1.0"), issue, `Corn is not tested for "dockage"`},
	{"a factor beyond its limit", withFactor("bcfm", "5.1"), issue, "is 5.1 %, over the limit of 5.0 %"},
	{"a doubt that stops a ticket", tooCold, issue, "This elevator stops a ticket for it: test again, or let a manager accept"},

	// Details that cannot be.
	{"open without a direction", nothing, open(func(d *load.Details) { d.Direction = "" }), `a load is inbound or outbound, not ""`},
	{"open with a price of zero", nothing, open(func(d *load.Details) { d.Price = housetest.Amount("0 $/bu") }), "type a price above zero, or leave it for later"},
	{"issue a grain not taken here", withDetails(func(d *load.Details) { d.Commodity = "soybeans" }), issue, "soybeans is not taken here"},
	{"issue before the rates began", withDetails(func(d *load.Details) { d.Day = quantity.MustDate("2026-07-31") }), issue, "no rates are in force for corn on 2026-07-31"},
	{"issue with a price in another unit", withDetails(func(d *load.Details) { d.Price = housetest.Amount("7.50 $/cwt") }), issue, "this edition settles in bu"},
	{"issue stored grain with a price", withDetails(func(d *load.Details) { d.Under, d.Price = title.OpenStorage, housetest.Amount("5 $/bu") }), issue, "Stored grain has no price: it stays its owner's."},
	{"issue with shares over the whole", withDetails(overShared), issue, "The shares add to 150 %, not to the whole."},

	// What comes after the ticket.
	{"amend an issued ticket", ticketed, amend, "Ticket 1 is issued; correct the ticket, or void it and weigh again"},
	{"weigh an issued ticket", ticketed, weighGross, "Ticket 1 is issued; correct the ticket"},
	{"sample an issued ticket", ticketed, sample("17.0"), "Ticket 1 is issued; correct the ticket"},
	{"refuse an issued ticket", ticketed, refuse("hot"), "Ticket 1 is issued; correct the ticket"},
	{"issue a ticket twice", ticketed, issue, "Ticket 1 is issued; print it again as a reprint"},
	{"void without a reason", asManager(ticketed), void(" "), "a ticket is voided only with a reason; type one"},
	{"correct without a reason", asManager(ticketed), correct(""), "a ticket is corrected only with a reason; type one"},
	{"void a ticket twice", housetest.Voided, void("again"), "Ticket 1 is void (a trial); reissue it, or open a new load"},
	{"correct a void ticket", housetest.Voided, correct("again"), "Ticket 1 is void (a trial); reissue it, or open a new load"},
	{"issue a void ticket", housetest.Voided, issue, "Ticket 1 is void (a trial); reissue it, or open a new load"},
	{"void a corrected ticket", housetest.Corrected, void("again"), "Ticket 1 was corrected by ticket 2; go on with ticket 2"},
	{"correct a corrected ticket", housetest.Corrected, correct("again"), "Ticket 1 was corrected by ticket 2; go on with ticket 2"},
	{"correct a ticket twice at once", underCorrection, correct("again"), "ticket 1 is being corrected already, as load L2"},
	{"issue the correction of a void ticket", voidedUnderCorrection, issue, "Ticket 1 is void (a trial)"},
	{"reissue an unknown ticket", asManager(nothing), reissue("torn"), "there is no ticket 0 in this book"},
	{"reissue a ticket in force", asManager(ticketed), reissue("torn"), "Ticket 1 is issued; void it first, or correct it"},
	{"reissue a corrected ticket", housetest.Corrected, reissue("torn"), "Ticket 1 was corrected by ticket 2; go on with ticket 2"},
	{"reissue without a reason", housetest.Voided, reissue(" "), "a void ticket is reissued only with a reason; type one"},
	{"reissue a ticket twice at once", housetest.UnderReissue, reissue("torn"), "ticket 1 is being reissued already, as load L2. Finish that load, or turn it away"},
	{"reissue a ticket twice", housetest.Reissued, reissue("torn"), "Ticket 1 is void and was reissued as ticket 2; go on with ticket 2"},
	{"void a reissued ticket once more", housetest.Reissued, void("again"), "Ticket 1 is void and was reissued as ticket 2; go on with ticket 2"},
	{"correct a reissued ticket", housetest.Reissued, correct("again"), "Ticket 1 is void and was reissued as ticket 2; go on with ticket 2"},
	{"issue a reissue that lost its tare", reissueSwapped, issue, "Net would be"},
	{"weigh a refused load", housetest.TurnedAway, weighGross, "Load L1 was refused (hot); open a new load"},
	{"issue a refused load", housetest.TurnedAway, issue, "Load L1 was refused (hot); open a new load"},
	{"refuse without a reason", arrived, refuse(""), "a load is refused only with a reason; type one"},

	// Days.
	{"close a day to come", asManager(nothing), closeDay("2026-10-02"), "2026-10-02 has not come yet; today is 2026-10-01"},
	{"close a day twice", dayClosed, closeDay("2026-10-01"), "2026-10-01 is closed already"},

	// Who may do what.
	{"a clerk voids", ticketed, void("a trial"), "Voiding a ticket is for a manager; Cal Reyes is signed in as clerk"},
	{"a clerk reissues", signedIn(housetest.Clerk, housetest.Voided), reissue("torn"), "Reissuing a void ticket is for a manager; Cal Reyes is signed in as clerk"},
	{"a clerk corrects", ticketed, correct("a trial"), "Correcting a ticket is for a manager"},
	{"a clerk accepts", arrived, accept("bcfm", "so be it"), "Accepting a load beyond a limit is for a manager"},
	{"a clerk closes the day", nothing, closeDay("2026-10-01"), "Closing the day is for a manager"},
	{"a clerk sets up", nothing, setProfile(housetest.Profile()), "The set-up is for a manager"},
	{"a clerk adds people", nothing, setPerson(elevator.Person{Name: "Ned New", Role: elevator.Clerk}), "Adding people is for a manager"},
	{"a tester opens a load", asTester(nothing), open(func(*load.Details) {}), "Tess Lind is signed in as tester and may not open a load"},
	{"a tester weighs", asTester(arrived), weighGross, "may not weigh"},
	{"a tester issues", asTester(ready), issue, "may not issue a ticket"},
	{"a tester amends", asTester(arrived), amend, "may not change a load"},
	{"a tester refuses", asTester(arrived), refuse("hot"), "may not refuse a load"},
	{"accept no limit", asManager(arrived), accept(" ", "so be it"), "no limit is named"},
	{"accept without a reason", asManager(arrived), accept("bcfm", ""), "a limit is accepted only with a reason"},

	// The elevator itself.
	{"a profile without anything", asManager(nothing), setProfile(elevator.Profile{}), "The business name is empty; every ticket prints it."},
	{"a person without a role", asManager(nothing), setPerson(elevator.Person{Name: "Ned New"}), `a person is clerk, tester or manager`},
	{"the last manager goes", asManager(nothing), setPerson(elevator.Person{Name: housetest.Manager, Role: elevator.Manager, Gone: true}), "Mae Orton is the only manager here"},
	{"the last manager turns clerk", asManager(nothing), setPerson(elevator.Person{Name: housetest.Manager, Role: elevator.Clerk}), "Mae Orton is the only manager here"},
	{"a grower without a name", nothing, setGrower(elevator.Grower{ID: "G1"}), "a grower has a short code and a name"},
	{"a grower shared by half", nothing, setGrower(halfShared), "the shares of Ada Field add to 50 %, not to 100 %"},
	{"a truck's tare of no day", nothing, setTruck(elevator.Truck{ID: "T1", Tare: housetest.Amount("24300 lb")}), "the stored tare of truck T1 has no day"},
}

func TestIllegalMovesWriteNothing(t *testing.T) {
	for _, c := range illegal {
		t.Run(c.name, func(t *testing.T) {
			s := housetest.New(t)
			id, number := c.scene(s)
			before := s.Contents()
			err := c.move(s, id, number)
			refused(t, err, c.want)
			for _, word := range []string{"sql", "SQL", "nil", "%!", "constraint"} {
				if err != nil && strings.Contains(err.Error(), word) {
					t.Errorf("%q is no word for a person: %v", word, err)
				}
			}
			if s.Contents() != before {
				t.Error("something was written")
			}
			s.Verify()
		})
	}
}

// Nobody signed in may do nothing that is recorded.
func TestNobodySignedInWritesNothing(t *testing.T) {
	s := housetest.New(t)
	id, number := ready(s)
	s.Desk = unsigned(t, s)
	before := s.Contents()
	for name, move := range map[string]func(*scene, string, int64) error{
		"open": open(func(*load.Details) {}), "weigh": weighGross, "sample": sample("17.0"), "issue": issue, "print": printed,
		"refuse": refuse("hot"), "void": void("a trial"), "correct": correct("a trial"), "reissue": reissue("a trial"), "close": closeDay("2026-10-01"),
		"grower": setGrower(elevator.Grower{ID: "G9", Name: "Nine"}), "profile": setProfile(housetest.Profile()),
	} {
		refused(t, move(s, id, number), "nobody is signed in")
		if s.Contents() != before {
			t.Fatalf("%s: something was written", name)
		}
	}
}
