package elevator

import (
	"cmp"
	"slices"
	"strings"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Profile is the elevator itself, as printed at the head of every ticket.
type Profile struct {
	Business string `json:"business"`
	Street   string `json:"street"`
	Town     string `json:"town"`
	Phone    string `json:"phone"`
	Licence  string `json:"licence,omitempty"` // warehouse licence or weighmaster number
	// Demo marks an invented elevator: everything it prints says so.
	Demo   bool    `json:"demo,omitempty"`
	Scales []Scale `json:"scales"`
	Rules  string  `json:"rules"` // rule set: "us" or "canada"
	// Place is the state or province whose law on tickets it follows, such as "montana"; empty
	// where that was not read.
	Place string `json:"place,omitempty"`
	// Unlicensed marks an elevator under the Canadian rule set that is not
	// licensed under the Canada Grain Act, whose rules on shrink and handling
	// then do not bind it.
	Unlicensed bool        `json:"unlicensed,omitempty"`
	Grains     []GrainRule `json:"grains"`
	// RetainDays is the number of days samples are kept.
	RetainDays int `json:"retain_days,string"`
	// DisputeDays is the posted number of days from delivery in which another test may
	// be asked for; 0 takes the days samples are kept. In Canada the law says it.
	DisputeDays int `json:"dispute_days,string,omitempty"`
	// StopOn lists the codes of trust flags that stop a ticket until a manager
	// lets it through.
	StopOn   []string `json:"stop_on,omitempty"`
	Language string   `json:"language,omitempty"` // "en", "fr"
	Dates    string   `json:"dates,omitempty"`    // "iso" or "local"
	Weigher  string   `json:"weigher,omitempty"`  // who signs when nobody has signed in
	// Guards are the elevator's own limits, Compulsory the fields every ticket must have, and
	// ManualReasons the reasons for a typed weight.
	Guards        GuardRules   `json:"guards,omitempty"`
	Compulsory    []Compulsory `json:"compulsory,omitempty"`
	ManualReasons []string     `json:"manual_reasons,omitempty"`
	// AskPIN are the acts that ask for a PIN, beside those of managers.
	AskPIN []PINAct `json:"ask_pin,omitempty"`
	// CopiesFor lists the recipients a ticket prints a copy for: "driver", "office", "landlord".
	// Each copy names its recipient; none means one copy without a name.
	CopiesFor []string `json:"copies_for,omitempty"`
	// DriverMoney lets the driver's copy, and the code on it, say what is paid.
	DriverMoney bool `json:"driver_money,omitempty"`
	// FillOrder is which contract takes what another has no room for: "until", the one that ends
	// first, where nothing is said; "number"; "price", the dearest.
	FillOrder string `json:"fill_order,omitempty"`
	// WaitMinutes is the longest wait on the yard before a truck is pointed at; 0 takes
	// [UsualWaitMinutes].
	WaitMinutes int `json:"wait_minutes,string,omitempty"`
	// Letters stand before the numbers of tickets on paper, where a company has several sites.
	Letters string `json:"letters,omitempty"`
	// CropStarts are the days on which the crop years of grains begin.
	CropStarts []CropStart `json:"crop_starts,omitempty"`
}

// UsualWaitMinutes is the default of WaitMinutes.
const UsualWaitMinutes = 45

// mostWaitMinutes is a day: who waits longer has gone home.
const mostWaitMinutes = 24 * 60

// WaitLimit is the longest wait on the yard, in minutes, before a truck is pointed at.
func (p Profile) WaitLimit() int { return cmp.Or(p.WaitMinutes, UsualWaitMinutes) }

// CheckWait says what is wrong with the limit of waiting, or nothing.
func (p Profile) CheckWait() error {
	if p.WaitMinutes < 0 || p.WaitMinutes > mostWaitMinutes {
		return message.Invalid.Errorf("A truck waits %d minutes at most; say a number from 1 to %d.", p.WaitMinutes, mostWaitMinutes)
	}
	return nil
}

// UsualRetainDays is the default number of days that samples are kept:
// 7 in Canada, where another test may be asked for so long, else 3 as of a truck
// officially inspected in the United States (7 CFR 800.152).
func UsualRetainDays(rules string) int {
	if rules == "canada" {
		return 7
	}
	return 3
}

// mostCopies is the largest number of copies of a ticket.
const mostCopies = 6

// Scale is one truck scale.
type Scale struct {
	ID       string          `json:"id"`
	Division quantity.Amount `json:"division"`
	Capacity quantity.Amount `json:"capacity"`
	// Link is the address of its indicator: "tcp://host:port", "serial:///dev/ttyUSB0", or empty
	// when weights are typed.
	Link string `json:"link,omitempty"`
}

// GrainRule is a commodity the elevator takes and the schedule it settles it
// under.
type GrainRule struct {
	Commodity string `json:"commodity"`
	Schedule  string `json:"schedule"`
}

// Kind names the fact in the journal.
func (Profile) Kind() string { return "house.profile" }

// Check lists what the profile lacks for a ticket, each a sentence.
func (p Profile) Check() []message.Text {
	var out []message.Text
	need := func(value string, name message.Text) {
		if strings.TrimSpace(value) == "" {
			out = append(out, message.New("The %s is empty; every ticket prints it. Type it in the set-up.", name))
		}
	}
	need(p.Business, message.New("business name"))
	need(p.Street, message.New("street address"))
	need(p.Town, message.New("town"))
	need(p.Phone, message.New("phone number"))
	if len(p.Scales) == 0 {
		out = append(out, message.New("No scale is set up; a ticket names the scale. Add one in the set-up."))
	}
	for i, s := range p.Scales {
		out = append(out, s.check()...)
		if slices.ContainsFunc(p.Scales[:i], func(before Scale) bool { return before.ID == s.ID }) {
			out = append(out, message.New("Two scales are called %v; a ticket must tell which. Give one another name.", s.ID))
		}
	}
	for _, r := range p.Guards {
		if err := r.Check(); err != nil {
			out = append(out, message.Stopped(message.Of(err)))
		}
	}
	if err := p.CheckCopies(); err != nil {
		out = append(out, message.Of(err))
	}
	if err := p.CheckWait(); err != nil {
		out = append(out, message.Of(err))
	}
	if err := CheckLetters(p.Letters); err != nil {
		out = append(out, message.Of(err))
	}
	for _, c := range p.CropStarts {
		if err := c.Check(); err != nil {
			out = append(out, message.Of(err))
		}
	}
	if err := p.checkPINActs(); err != nil {
		out = append(out, message.Of(err))
	}
	if len(p.Grains) == 0 {
		out = append(out, message.New("No commodity is set up. Choose at least one in the set-up."))
	}
	return out
}

func (s Scale) check() []message.Text {
	var out []message.Text
	if strings.TrimSpace(s.ID) == "" {
		out = append(out, message.New("A scale has no name; a ticket names the scale."))
	}
	for _, w := range []struct {
		name   message.Text
		amount quantity.Amount
	}{{message.New("division"), s.Division}, {message.New("capacity"), s.Capacity}} {
		if unit := w.amount.Unit(); unit != quantity.Lb && unit != quantity.Kg || w.amount.Sign() <= 0 {
			out = append(out, message.New("The %s of scale %v is %s; it is a weight above zero in lb or kg.", w.name, s.ID, w.amount))
		}
	}
	return out
}

// CheckCopies says what is wrong with the list of copies, or nothing.
func (p Profile) CheckCopies() error {
	if len(p.CopiesFor) > mostCopies {
		return message.Invalid.Errorf("A ticket prints %d copies; at most %d are printed.", len(p.CopiesFor), mostCopies)
	}
	return nil
}

// UnderGrainAct reports whether the elevator is licensed under the Canada Grain
// Act, as one under the Canadian rule set is unless it says otherwise.
func (p Profile) UnderGrainAct() bool { return p.Rules == "canada" && !p.Unlicensed }

// WeightUnit is the unit the first scale weighs in.
func (p Profile) WeightUnit() quantity.Unit {
	if len(p.Scales) == 0 {
		return quantity.Lb
	}
	return p.Scales[0].Division.Unit()
}

// Scale finds a scale by name.
func (p Profile) Scale(id string) (Scale, bool) {
	for _, s := range p.Scales {
		if s.ID == id {
			return s, true
		}
	}
	return Scale{}, false
}

// Schedule is the schedule a commodity is settled under.
func (p Profile) Schedule(commodity string) (string, bool) {
	for _, g := range p.Grains {
		if g.Commodity == commodity {
			return g.Schedule, true
		}
	}
	return "", false
}
