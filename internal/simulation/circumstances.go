package simulation

import (
	"time"

	"tenthpoint/internal/book/sqlite/faultdisk"
	"tenthpoint/internal/journal"
)

// An ailment is a failure to be injected at some call to the disk.
type ailment int

const (
	healthy  ailment = iota
	hiccup           // one call fails
	roomless         // the disk is full
	killed           // the program ends without a word
	powerCut         // and with it what was not synced
)

// falls draws what befalls the disk, now and then, at one of the next calls that write.
func (w *world) falls() {
	if w.ails != healthy || w.draw.IntN(12) > 0 {
		return
	}
	w.ails = ailment(1 + w.draw.IntN(4))
	how := map[ailment]faultdisk.Fault{hiccup: faultdisk.Once, roomless: faultdisk.Full, killed: faultdisk.Death, powerCut: faultdisk.Death}[w.ails]
	w.disk.Fail(1+w.draw.IntN(40), how)
}

// recovers has the disk work again, and after a sudden end the book opened anew.
func (w *world) recovers() {
	struck, ails := w.disk.Struck(), w.ails
	w.ails = healthy
	if struck {
		w.out.Faults++
	}
	if !struck || ails == hiccup || ails == roomless {
		w.disk.Fail(0, faultdisk.Once)
		return
	}
	w.out.Deaths++
	w.shut()
	if ails == killed {
		w.disk.AfterKill()
	} else {
		w.disk.AfterPowerCut(w.t, w.draw)
	}
	w.open()
	if len(w.out.Found) == 0 {
		w.adopt()
		w.check()
	}
}

// adopt takes what a sudden end left in the book of an act that nobody was told of: it may be
// there, but whole, and after everything acknowledged.
func (w *world) adopt() {
	if all := w.journal(); len(all) > len(w.acknowledged) {
		w.acknowledged = append(w.acknowledged, all[len(w.acknowledged):]...)
	}
}

// timePasses from one truck to the next, and over night.
func (w *world) timePasses() {
	w.now = w.now.Add(time.Duration(20+w.draw.IntN(500)) * time.Second)
	if w.now.Hour() >= 19 {
		days := 1
		if w.draw.IntN(8) == 0 {
			days = 3 // over a Sunday and a wet day
		}
		w.now = w.now.AddDate(0, 0, days).Truncate(24 * time.Hour).Add(7 * time.Hour)
	}
	switch {
	case w.astray != 0 && w.draw.IntN(20) == 0:
		w.astray = 0
	case w.astray == 0 && w.draw.IntN(60) == 0:
		w.astray = w.stepOfTheClock()
	}
}

// stepOfTheClock is by seconds, as over a network, by hours, days or most of a year, back or forward.
func (w *world) stepOfTheClock() time.Duration {
	n := time.Duration(w.draw.IntN(50) - 25)
	return n * []time.Duration{time.Second, time.Hour, 24 * time.Hour, 12 * 24 * time.Hour}[w.draw.IntN(4)]
}

// How far the clock may be from the last fact without a question; the package scalehouse has
// limits of its own, which these are held against.
const (
	backUnasked    = 2 * time.Minute
	forwardUnasked = 100 * 24 * time.Hour
	closingUnasked = 7 * 24 * time.Hour
)

// isClockDue reports whether an act must be asked about the clock.
func (w *world) isClockDue(a act) bool {
	last, err := time.Parse(journal.TimeLayout, w.lastAt())
	must(w.t, err)
	gone, most := w.clock().UTC().Truncate(time.Second).Sub(last), forwardUnasked
	if a.closes {
		most = closingUnasked
	}
	return gone < -backUnasked || gone > most
}

func (w *world) lastAt() string { return w.acknowledged[len(w.acknowledged)-1].At }
