package headoffice_test

import (
	"bytes"
	"iter"
	"slices"
	"testing"

	"tenthpoint/internal/headoffice"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/signing"
)

// chain links drafts.
type chain []journal.Fact

func (c *chain) add(t *testing.T, subject string, f journal.Kinded) {
	t.Helper()
	body, err := journal.Canonical(f)
	if err != nil {
		t.Fatal(err)
	}
	var last *journal.Fact
	if len(*c) > 0 {
		last = &(*c)[len(*c)-1]
	}
	*c = append(*c, journal.Link(last, journal.Entry{At: "2026-10-01T12:00:00Z", Who: "Mae", Desk: "d", Kind: f.Kind(), Subject: subject, Body: body}))
}

func (c chain) head() journal.Head { return journal.HeadOf(c[len(c)-1]) }

func (c chain) all() iter.Seq2[journal.Fact, error] {
	return func(yield func(journal.Fact, error) bool) {
		for _, f := range c {
			if !yield(f, nil) {
				return
			}
		}
	}
}

func key(t *testing.T, seed byte) signing.Key {
	t.Helper()
	k, err := signing.NewKey(bytes.NewReader(bytes.Repeat([]byte{seed}, 64)))
	if err != nil {
		t.Fatal(err)
	}
	return k
}

func signedChain(t *testing.T) chain {
	t.Helper()
	house, computer := key(t, 1), key(t, 2)
	var c chain
	c.add(t, signing.Subject, signing.HouseKey{Key: house.Public()})
	c.add(t, signing.Subject, house.Certify("desk 1", computer.Public()))
	c.add(t, "clock", journal.ClockAnswered{Reason: "a battery"})
	signed, err := computer.SignAct(3, c.head())
	if err != nil {
		t.Fatal(err)
	}
	c.add(t, signing.Subject, signed)
	c.add(t, "clock", journal.ClockAnswered{Reason: "a battery"})
	return c
}

func TestCheckOfAChain(t *testing.T) {
	sound := signedChain(t)
	got, err := headoffice.Check(sound.all(), sound.head(), sound.head())
	if err != nil || len(got.Problems) > 0 || got.Facts != 5 || got.Signed != journal.HeadOf(sound[2]) {
		t.Errorf("a sound chain: %+v, %v", got, err)
	}

	for name, spoil := range map[string]func(c chain) (chain, journal.Head, journal.Head){
		"cut off": func(c chain) (chain, journal.Head, journal.Head) { return c[:4], c.head(), c.head() },
		"changed": func(c chain) (chain, journal.Head, journal.Head) { c[2].Who = "Cal"; return c, c.head(), c.head() },
		"another": func(c chain) (chain, journal.Head, journal.Head) {
			return c, c.head(), journal.Head{Seq: 2, Hash: "00"}
		},
		"not of them": func(c chain) (chain, journal.Head, journal.Head) {
			return moved(t, c), moved(t, c).head(), journal.Head{}
		},
	} {
		t.Run(name, func(t *testing.T) {
			c, ends, said := spoil(slices.Clone(sound))
			if got, err := headoffice.Check(c.all(), ends, said); err != nil || len(got.Problems) != 1 {
				t.Errorf("%+v, %v; want one problem", got, err)
			}
		})
	}
}

// moved is an unbroken chain in which a signature stands behind another fact than it was made for.
func moved(t *testing.T, c chain) chain {
	t.Helper()
	var out chain
	for _, f := range c[:2] {
		out = append(out, f)
	}
	out.add(t, "clock", journal.ClockAnswered{Reason: "another"})
	signed, err := journal.ReadBody[signing.Signed](c[3].Body)
	if err != nil {
		t.Fatal(err)
	}
	out.add(t, signing.Subject, signed)
	return out
}
