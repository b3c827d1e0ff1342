package scalehouse

import (
	"context"
	"slices"
	"strings"
	"time"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/keyring"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/pin"
	"tenthpoint/internal/signing"
)

// proofLasts is the time a typed PIN holds while its person goes on acting.
const proofLasts = 5 * time.Minute

// proofs are the PINs of a house as its desk knows them, and who proved to be who.
type proofs struct {
	pins  map[string]elevator.PIN
	since map[string]time.Time
}

// usePINs takes the PINs of the house.
func (p *proofs) usePINs(all []elevator.PIN) {
	p.pins = map[string]elevator.PIN{}
	for _, one := range all {
		p.pins[one.Name] = one
	}
}

// HasPIN reports whether somebody's name is locked.
func HasPIN(d *Desk, name string) bool { return d.proofs.pins[name].Lock != "" }

// AsksPIN reports whether any act of the person signed in may ask for a PIN.
func AsksPIN(d *Desk) bool {
	return d.who.Role == elevator.Manager && managersHavePINs(d) || d.who.Name != "" && len(d.profile.AskPIN) > 0
}

// managersHavePINs reports whether a manager who works here has a PIN. From then on managers' acts ask
// for one.
func managersHavePINs(d *Desk) bool {
	return slices.ContainsFunc(d.people, func(p elevator.Person) bool {
		return p.Role == elevator.Manager && !p.Gone && HasPIN(d, p.Name)
	})
}

// proven refuses an act that asks for a PIN until the person signed in has typed it.
func proven(d *Desk, asks bool) error {
	if !asks {
		return nil
	}
	name := d.who.Name
	if !HasPIN(d, name) {
		return message.Refused.Errorf("this asks for a PIN, and %v has none. A manager who has one gives it, under Equipment or by \"tenth person pin\"", name)
	}
	now := d.clock()
	since, typed := d.proofs.since[name]
	if gone := now.Sub(since); !typed || gone < 0 || gone > proofLasts {
		return pin.Asked{Who: name}
	}
	d.proofs.since[name] = now
	return nil
}

// provenFor refuses an act that the house asks a PIN for.
func provenFor(d *Desk, act elevator.PINAct) error {
	return proven(d, slices.Contains(d.profile.AskPIN, act))
}

// Prove takes somebody's PIN. It holds for some minutes from the last act. A wrong one is a fact, and
// each after the third is taken only after a wait.
func Prove(ctx context.Context, d *Desk, name, typed string) error {
	known, err := pinOf(ctx, d, name)
	if err != nil {
		return err
	}
	right := pin.Opens(known.Lock, typed)
	var refused error
	err = d.do(ctx, func(w *Batch) error {
		now, err := pinIn(w, name)
		if err != nil {
			return err
		}
		if err := waited(w, now); err != nil {
			return err
		}
		if now.Lock != known.Lock {
			return message.Refused.Errorf("the PIN of %v was changed just now. Type it again", name)
		}
		if right && now.Wrong == 0 {
			return nil
		}
		now.Wrong, now.Tried = now.Wrong+1, w.desk.Now()
		if right {
			now.Wrong, now.Tried = 0, ""
		} else {
			refused = message.Refused.Errorf("that is not the PIN of %v", name)
		}
		return putPIN(w, now)
	})
	if err == nil {
		err = refused
	}
	if err != nil {
		delete(d.proofs.since, name)
		return err
	}
	d.proofs.since[name] = d.clock()
	return nil
}

// waited refuses a PIN that is typed too soon after wrong ones.
func waited(w *Batch, p elevator.PIN) error {
	tried, err := time.Parse(journal.TimeLayout, p.Tried)
	if err != nil {
		return nil // nothing was tried
	}
	left := pin.Wait(p.Wrong) - w.desk.clock().Sub(tried)
	if left <= 0 {
		return nil
	}
	return message.Refused.Errorf("%d wrong PINs were typed for %v. The next one is taken in %d seconds", p.Wrong, p.Name, int((left+time.Second-1)/time.Second))
}

// Unprove ends what somebody's PIN holds for, as when another person takes the desk.
func Unprove(d *Desk, name string) { delete(d.proofs.since, name) }

// SetPIN gives a person a PIN in place of any before: their own by themselves, another's by a manager.
// The first is a manager's, in a house with a key: whoever has the house's key can take a forgotten
// PIN away.
func SetPIN(ctx context.Context, d *Desk, name, typed string, salt pin.Salt) error {
	if err := maySetPIN(ctx, d, name); err != nil {
		return err
	}
	lock, err := pin.Lock(typed, salt)
	if err != nil {
		return err
	}
	err = d.do(ctx, func(w *Batch) error { return putPIN(w, elevator.PIN{Name: name, Lock: lock}) })
	if err == nil && name == d.who.Name {
		d.proofs.since[name] = d.clock()
	}
	return err
}

func maySetPIN(ctx context.Context, d *Desk, name string) error {
	if !slices.ContainsFunc(d.People(), func(p elevator.Person) bool { return p.Name == name }) {
		return message.NotFound.Errorf("nobody called %v works here", name)
	}
	if name == d.who.Name && HasPIN(d, name) {
		return proven(d, true)
	}
	if err := d.MayManage("Giving a PIN"); err != nil || managersHavePINs(d) {
		return err
	}
	if name != d.who.Name {
		return message.Refused.Errorf("the first PIN is a manager's own: give %v one first", d.who.Name)
	}
	keys, err := keyring.Read(ctx, d.book)
	if err == nil && keys.IsEmpty() {
		err = message.Refused.Errorf("make the house's key first (tenth key house): without it a forgotten PIN locks the set-up for good")
	}
	return err
}

// ForgetPIN takes a forgotten PIN away: a manager's act, or that of whoever has the house's key.
func ForgetPIN(ctx context.Context, d *Desk, name, reason string, house signing.Key) error {
	if house.IsZero() {
		if err := d.MayManage("Taking a PIN away"); err != nil {
			return err
		}
	} else if keys, err := keyring.Read(ctx, d.book); err != nil || keys.House() != house.Public() {
		return message.Refused.Errorf("that is not the key of this house")
	}
	if strings.TrimSpace(reason) == "" {
		return message.Incomplete.Errorf("a PIN is taken away for a reason; type one")
	}
	if _, err := pinOf(ctx, d, name); err != nil {
		return err
	}
	delete(d.proofs.since, name)
	return d.do(ctx, func(w *Batch) error { return putPIN(w, elevator.PIN{Name: name, Reason: reason}) })
}

// pinOf is somebody's PIN as the book now has it.
func pinOf(ctx context.Context, d *Desk, name string) (elevator.PIN, error) {
	all, err := office.RecordsOf[elevator.PIN](ctx, d.book)
	if err != nil {
		return elevator.PIN{}, err
	}
	return pinAmong(all, name)
}

func pinIn(w *Batch, name string) (elevator.PIN, error) {
	all, err := RecordsIn[elevator.PIN](w)
	if err != nil {
		return elevator.PIN{}, err
	}
	return pinAmong(all, name)
}

func pinAmong(all []elevator.PIN, name string) (elevator.PIN, error) {
	i := slices.IndexFunc(all, func(p elevator.PIN) bool { return p.Name == name && p.Lock != "" })
	if i < 0 {
		return elevator.PIN{}, message.NotFound.Errorf("%v has no PIN", name)
	}
	return all[i], nil
}

func putPIN(w *Batch, p elevator.PIN) error {
	w.recorded = true
	return w.putRecord(p.Kind()+" "+p.Name, p.Name, p)
}
