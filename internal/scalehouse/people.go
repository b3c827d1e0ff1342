package scalehouse

import (
	"strings"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/message"
)

// SignIn makes a person the one who acts from now on. In a book without people
// anyone may sign in and does so as manager, to set the elevator up.
func (d *Desk) SignIn(name string) error {
	name = strings.TrimSpace(name)
	if name == "" {
		return message.NotSignedIn.Errorf("nobody is signed in; type your full name, as it is to stand on tickets")
	}
	if len(d.people) == 0 {
		d.who = elevator.Person{Name: name, Role: elevator.Manager}
		return nil
	}
	var known []string
	for _, p := range d.people {
		if p.Name == name && !p.Gone {
			d.who = p
			return nil
		}
		if !p.Gone {
			known = append(known, p.Name)
		}
	}
	return message.Refused.Errorf("%s does not work at this desk. Known here: %s. A manager can add people in the set-up", name, strings.Join(known, ", "))
}

// Who is signed in.
func (d *Desk) Who() elevator.Person { return d.who }

// People returns all who work at the desk, without those who left.
func (d *Desk) People() []elevator.Person {
	var out []elevator.Person
	for _, p := range d.people {
		if !p.Gone {
			out = append(out, p)
		}
	}
	return out
}

// MayManage returns an error that names a manager's act, unless a manager is signed in, who has typed
// a PIN where managers have one.
func (d *Desk) MayManage(act string) error {
	if d.who.Role == elevator.Manager {
		return proven(d, managersHavePINs(d))
	}
	if d.who.Name == "" {
		return message.NotSignedIn.Errorf("nobody is signed in. %s is for a manager: sign in first", act)
	}
	return message.Refused.Errorf("%s is for a manager; %s is signed in as %s. Ask a manager to sign in", act, d.who.Name, d.who.Role)
}

// MayWeigh returns an error that names the act, unless someone who may weigh is signed in.
func (d *Desk) MayWeigh(act string) error { return MayAct(d, elevator.WeightActs, act) }

// MayAct is the same for other acts of those who may weigh, with the PIN that the house asks for.
func MayAct(d *Desk, kind elevator.PINAct, act string) error {
	switch d.who.Role {
	case elevator.Clerk, elevator.Manager:
		return provenFor(d, kind)
	case "":
		return message.NotSignedIn.Errorf("nobody is signed in. Sign in with your full name before you %s", act)
	}
	return message.Refused.Errorf("%s is signed in as %s and may not %s. Ask a clerk or a manager", d.who.Name, d.who.Role, act)
}

// MaySample only requires that somebody is signed in, with the PIN that the house asks for.
func MaySample(d *Desk) error {
	if err := d.somebody("write down a sample"); err != nil {
		return err
	}
	return provenFor(d, elevator.SampleActs)
}

// somebody returns an error that names the act, unless someone is signed in.
func (d *Desk) somebody(act string) error {
	if d.who.Name == "" {
		return message.NotSignedIn.Errorf("nobody is signed in. Sign in with your full name before you %s", act)
	}
	return nil
}

// Signature is the name for facts; acts that need a person have checked before.
func (d *Desk) Signature() string {
	if d.who.Name == "" {
		return "nobody signed in"
	}
	return d.who.Name
}
