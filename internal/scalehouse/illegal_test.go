package scalehouse_test

import (
	"strings"
	"testing"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/message/errortest"
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
	want  errortest.Want
}{
	// Loads that are not there, or not whole.
	{"weigh an unknown load", nothing, weighGross, errortest.NotFound("L1")},
	{"issue an unknown load", nothing, issue, errortest.NotFound("L1")},
	{"issue without a tare", arrived, issue, errortest.Invalid()},
	{"issue without a sample", weighed, issue, errortest.Invalid()},
	{"print an unknown ticket", nothing, printed, errortest.NotFound("0")},
	{"void an unknown ticket", asManager(nothing), void("a trial"), errortest.NotFound("0")},
	{"correct an unknown ticket", asManager(nothing), correct("a trial"), errortest.NotFound("0")},

	// Weights that cannot be.
	{"a weight of zero", arrived, weigh(load.Weighing{Which: load.Tare, Source: load.FromScale, Weight: quantity.Zero(quantity.Lb)}), errortest.Invalid("0 lb")},
	{"a weight below zero", arrived, weigh(housetest.ScaleWeight(load.Tare, -24300)), errortest.Invalid("-24,300 lb")},
	{"a weight between divisions", arrived, weigh(housetest.ScaleWeight(load.Tare, 24310)), errortest.Invalid("24,310 lb", "20 lb", "24,300 lb", "24,320 lb")},
	{"a weight over the capacity", arrived, weigh(housetest.ScaleWeight(load.Gross, 126020)), errortest.Invalid("126,020 lb", "126,000 lb", "1")},
	{"a weight in another unit", arrived, weigh(load.Weighing{Which: load.Tare, Source: load.FromScale, Weight: quantity.Int(11000, quantity.Kg)}), errortest.Invalid("11,000 kg", "1", "lb")},
	{"a weight from no scale of ours", arrived, weigh(load.Weighing{Which: load.Tare, Source: load.FromScale, Scale: "9", Weight: quantity.Int(24300, quantity.Lb)}), errortest.NotFound("9")},
	{"a weight that is neither gross nor tare", arrived, weigh(housetest.ScaleWeight("net", 28000)), errortest.WrongPhase("net")},
	{"a weight by hand without a reason", arrived, weigh(load.Weighing{Which: load.Tare, Source: load.ByHand, Weight: quantity.Int(24300, quantity.Lb), Reason: "  "}), errortest.WrongPhase()},
	{"a stored gross", arrived, weigh(load.Weighing{Which: load.Gross, Source: load.StoredTare, Weight: quantity.Int(52300, quantity.Lb), Taken: quantity.MustDate("2026-09-20")}), errortest.WrongPhase()},
	{"a stored tare of no day", arrived, weigh(load.Weighing{Which: load.Tare, Source: load.StoredTare, Weight: quantity.Int(24300, quantity.Lb)}), errortest.WrongPhase()},
	{"issue with the tare above the gross", swapped, issue, errortest.Invalid("-28,000 lb", "24,300", "52,300")},

	// Samples that cannot be.
	{"moisture of zero", arrived, sample("0"), errortest.WrongPhase("0 %")},
	{"moisture of a hundred", arrived, sample("100"), errortest.WrongPhase("100 %")},
	{"moisture below zero", arrived, sample("-3"), errortest.WrongPhase("-3 %")},
	{"a factor the grain has not", withFactor("dockage", "1.0"), issue, errortest.Invalid("Corn", "dockage")},
	{"a factor beyond its limit", withFactor("bcfm", "5.1"), issue, errortest.Invalid("5.1 %", "5.0 %")},
	{"a doubt that stops a ticket", tooCold, issue, errortest.Refused()},

	// Details that cannot be.
	{"open without a direction", nothing, open(func(d *load.Details) { d.Direction = "" }), errortest.WrongPhase()},
	{"open with a price of zero", nothing, open(func(d *load.Details) { d.Price = housetest.Amount("0 $/bu") }), errortest.WrongPhase()},
	{"issue a grain not taken here", withDetails(func(d *load.Details) { d.Commodity = "soybeans" }), issue, errortest.Invalid("soybeans")},
	{"issue before the rates began", withDetails(func(d *load.Details) { d.Day = quantity.MustDate("2026-07-31") }), issue, errortest.Invalid("corn", "2026-07-31")},
	{"issue with a price in another unit", withDetails(func(d *load.Details) { d.Price = housetest.Amount("7.50 $/cwt") }), issue, errortest.Invalid("bu")},
	{"issue stored grain with a price", withDetails(func(d *load.Details) { d.Under, d.Price = title.OpenStorage, housetest.Amount("5 $/bu") }), issue, errortest.Invalid()},
	{"issue with shares over the whole", withDetails(overShared), issue, errortest.Invalid("150 %")},

	// What comes after the ticket.
	{"amend an issued ticket", ticketed, amend, errortest.WrongPhase("1")},
	{"weigh an issued ticket", ticketed, weighGross, errortest.WrongPhase("1")},
	{"sample an issued ticket", ticketed, sample("17.0"), errortest.WrongPhase("1")},
	{"refuse an issued ticket", ticketed, refuse("hot"), errortest.WrongPhase("1")},
	{"issue a ticket twice", ticketed, issue, errortest.WrongPhase("1")},
	{"void without a reason", asManager(ticketed), void(" "), errortest.WrongPhase()},
	{"correct without a reason", asManager(ticketed), correct(""), errortest.WrongPhase()},
	{"void a ticket twice", housetest.Voided, void("again"), errortest.WrongPhase("1", "a trial")},
	{"correct a void ticket", housetest.Voided, correct("again"), errortest.WrongPhase("1", "a trial")},
	{"issue a void ticket", housetest.Voided, issue, errortest.WrongPhase("1", "a trial")},
	{"void a corrected ticket", housetest.Corrected, void("again"), errortest.WrongPhase("1", "2")},
	{"correct a corrected ticket", housetest.Corrected, correct("again"), errortest.WrongPhase("1", "2")},
	{"correct a ticket twice at once", underCorrection, correct("again"), errortest.Refused("1", "L2")},
	{"issue the correction of a void ticket", voidedUnderCorrection, issue, errortest.WrongPhase("1", "a trial")},
	{"reissue an unknown ticket", asManager(nothing), reissue("torn"), errortest.NotFound("0")},
	{"reissue a ticket in force", asManager(ticketed), reissue("torn"), errortest.WrongPhase("1")},
	{"reissue a corrected ticket", housetest.Corrected, reissue("torn"), errortest.WrongPhase("1", "2")},
	{"reissue without a reason", housetest.Voided, reissue(" "), errortest.WrongPhase()},
	{"reissue a ticket twice at once", housetest.UnderReissue, reissue("torn"), errortest.Refused("1", "L2")},
	{"reissue a ticket twice", housetest.Reissued, reissue("torn"), errortest.WrongPhase("1", "2")},
	{"void a reissued ticket once more", housetest.Reissued, void("again"), errortest.WrongPhase("1", "2")},
	{"correct a reissued ticket", housetest.Reissued, correct("again"), errortest.WrongPhase("1", "2")},
	{"issue a reissue that lost its tare", reissueSwapped, issue, errortest.Invalid()},
	{"weigh a refused load", housetest.TurnedAway, weighGross, errortest.WrongPhase("L1", "hot")},
	{"issue a refused load", housetest.TurnedAway, issue, errortest.WrongPhase("L1", "hot")},
	{"refuse without a reason", arrived, refuse(""), errortest.WrongPhase()},

	// Days.
	{"close a day to come", asManager(nothing), closeDay("2026-10-02"), errortest.Refused("2026-10-02", "2026-10-01")},
	{"close a day twice", dayClosed, closeDay("2026-10-01"), errortest.Refused("2026-10-01")},

	// Who may do what.
	{"a clerk voids", ticketed, void("a trial"), errortest.Refused("Voiding a ticket", "Cal Reyes", "clerk")},
	{"a clerk reissues", signedIn(housetest.Clerk, housetest.Voided), reissue("torn"), errortest.Refused("Reissuing a void ticket", "Cal Reyes", "clerk")},
	{"a clerk corrects", ticketed, correct("a trial"), errortest.Refused("Correcting a ticket")},
	{"a clerk accepts", arrived, accept("bcfm", "so be it"), errortest.Refused("Accepting a load beyond a limit")},
	{"a clerk closes the day", nothing, closeDay("2026-10-01"), errortest.Refused("Closing the day")},
	{"a clerk sets up", nothing, setProfile(housetest.Profile()), errortest.Refused("The set-up")},
	{"a clerk adds people", nothing, setPerson(elevator.Person{Name: "Ned New", Role: elevator.Clerk}), errortest.Refused("Adding people")},
	{"a tester opens a load", asTester(nothing), open(func(*load.Details) {}), errortest.Refused("Tess Lind", "tester", "open a load")},
	{"a tester weighs", asTester(arrived), weighGross, errortest.Refused("weigh")},
	{"a tester issues", asTester(ready), issue, errortest.Refused("issue a ticket")},
	{"a tester amends", asTester(arrived), amend, errortest.Refused("change a load")},
	{"a tester refuses", asTester(arrived), refuse("hot"), errortest.Refused("refuse a load")},
	{"accept no limit", asManager(arrived), accept(" ", "so be it"), errortest.WrongPhase()},
	{"accept without a reason", asManager(arrived), accept("bcfm", ""), errortest.WrongPhase()},

	// The elevator itself.
	{"a profile without anything", asManager(nothing), setProfile(elevator.Profile{}), errortest.Incomplete()},
	{"a person without a role", asManager(nothing), setPerson(elevator.Person{Name: "Ned New"}), errortest.Invalid()},
	{"the last manager goes", asManager(nothing), setPerson(elevator.Person{Name: housetest.Manager, Role: elevator.Manager, Gone: true}), errortest.Refused("Mae Orton")},
	{"the last manager turns clerk", asManager(nothing), setPerson(elevator.Person{Name: housetest.Manager, Role: elevator.Clerk}), errortest.Refused("Mae Orton")},
	{"a grower without a name", nothing, setGrower(elevator.Grower{ID: "G1"}), errortest.Invalid()},
	{"a grower shared by half", nothing, setGrower(halfShared), errortest.Invalid("Ada Field", "50")},
	{"a truck's tare of no day", nothing, setTruck(elevator.Truck{ID: "T1", Tare: housetest.Amount("24300 lb")}), errortest.Invalid("T1")},
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
		refused(t, move(s, id, number), errortest.Kind(message.NotSignedIn))
		if s.Contents() != before {
			t.Fatalf("%s: something was written", name)
		}
	}
}
