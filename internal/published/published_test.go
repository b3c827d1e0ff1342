package published_test

import (
	"iter"
	"slices"
	"strings"
	"testing"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/published"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/signing"
	"tenthpoint/schedules"
)

func day(text string) quantity.Date { return quantity.MustDate(text) }

func card(code, name, from string) published.Publication {
	return published.Publication{From: day(from), Grower: &elevator.Grower{ID: code, Name: name}}
}

// newKey is a key from a byte, so that a test's keys are the same each time.
func newKey(t *testing.T, seed byte) signing.Key {
	t.Helper()
	k, err := signing.NewKey(strings.NewReader(strings.Repeat(string(rune(seed)), 64)))
	if err != nil {
		t.Fatal(err)
	}
	return k
}

// office is the office's own book, as far as a site can learn of it.
type office struct {
	t               *testing.T
	facts           []journal.Fact
	house, computer signing.Key
}

func newOffice(t *testing.T) *office {
	o := &office{t: t, house: newKey(t, 'h'), computer: newKey(t, 'c')}
	o.write("house.truck", "house.truck 12", elevator.Truck{ID: "12"})
	o.write(signing.HouseKey{}.Kind(), signing.Subject, signing.HouseKey{Key: o.house.Public()})
	o.write(signing.Certificate{}.Kind(), signing.Subject, o.house.Certify("office1", o.computer.Public()))
	return o
}

func (o *office) write(kind, subject string, body any) {
	o.t.Helper()
	text, err := journal.Canonical(body)
	if err != nil {
		o.t.Fatal(err)
	}
	var last *journal.Fact
	if len(o.facts) > 0 {
		last = &o.facts[len(o.facts)-1]
	}
	o.facts = append(o.facts, journal.Link(last, journal.Entry{At: "2026-12-01T09:00:00Z", Who: "Mae Orton", Desk: "office", Kind: kind, Subject: subject, Body: text}))
}

func (o *office) publish(p published.Publication) { o.write(p.Kind(), p.Kind()+" "+p.ID(), p) }

func (o *office) sign(by signing.Key) {
	o.t.Helper()
	s, err := by.SignAct(1, journal.HeadOf(o.facts[len(o.facts)-1]))
	if err != nil {
		o.t.Fatal(err)
	}
	o.write(s.Kind(), signing.SignatureSubject, s)
}

func (o *office) following() published.Following {
	return published.Following{Office: "HQ", Fingerprint: o.house.Public().Fingerprint()}
}

// links are what travels to a site behind a fact.
func (o *office) links(behind int64) iter.Seq2[published.Link, error] {
	return func(yield func(published.Link, error) bool) {
		for _, f := range o.facts {
			l := published.Link{Fact: f}
			if !published.Told(f) {
				l = published.Link{Fact: journal.Fact{Seq: f.Seq, Prev: f.Prev, Hash: f.Hash}, Withheld: true}
			}
			if f.Seq > behind && !yield(l, nil) {
				return
			}
		}
	}
}

func names(all []published.Received) (out []string) {
	for _, r := range all {
		out = append(out, r.ID())
	}
	return out
}

// A site takes over what is signed, each once, and no more than that.
func TestASiteTakesOverWhatIsSigned(t *testing.T) {
	o := newOffice(t)
	o.publish(card("102", "Beatrix Holloway", "2026-12-01"))
	o.sign(o.computer)
	o.publish(card("103", "Otis Fenn", "2026-12-05"))

	news, next, waiting, err := o.following().Take(o.links(0))
	if err != nil || !slices.Equal(names(news), []string{"grower 102 2026-12-01"}) || waiting != 1 {
		t.Fatalf("took over %v, %d wait, %v", names(news), waiting, err)
	}
	if want := journal.HeadOf(o.facts[3]); next.Head() != want || news[0].Head() != want {
		t.Errorf("read up to %v, the card is at %v, want %v", next.Head(), news[0].Head(), want)
	}
	o.write("house.truck", "house.truck 13", elevator.Truck{ID: "13"})
	o.sign(o.computer)
	news, next, waiting, err = next.Take(o.links(next.Seq))
	if err != nil || !slices.Equal(names(news), []string{"grower 103 2026-12-05"}) || waiting != 0 {
		t.Fatalf("then took over %v, %d wait, %v", names(news), waiting, err)
	}
	if news, _, _, err = next.Take(o.links(next.Seq)); err != nil || len(news) != 0 {
		t.Errorf("a third time took over %v, %v", names(news), err)
	}
}

// What is not the office's own, whole and signed by its key is refused, and nothing is taken over.
func TestASiteTakesOverNothingElse(t *testing.T) {
	for name, one := range map[string]struct {
		spoil func(*office) (f published.Following, links []published.Link)
		want  errortest.Want
	}{
		"a card changed on its way": {func(o *office) (published.Following, []published.Link) {
			links := slices.Collect(linksOf(o))
			links[3].Body = []byte(strings.Replace(string(links[3].Body), "Beatrix", "Beatrice", 1))
			return o.following(), links
		}, errortest.Invalid()},
		"a fact left out": {func(o *office) (published.Following, []published.Link) {
			links := slices.Collect(linksOf(o))
			return o.following(), slices.Delete(links, 0, 1)
		}, errortest.Refused()},
		"a link of another chain": {func(o *office) (published.Following, []published.Link) {
			links := slices.Collect(linksOf(o))
			links[0].Hash = strings.Repeat("0", 64)
			return o.following(), links
		}, errortest.Refused()},
		"another house's key": {func(o *office) (published.Following, []published.Link) {
			f := o.following()
			f.Fingerprint = newKey(o.t, 'x').Public().Fingerprint()
			return f, slices.Collect(linksOf(o))
		}, errortest.Refused()},
		"a signature of a key nobody certified": {func(o *office) (published.Following, []published.Link) {
			o.sign(newKey(o.t, 'y'))
			return o.following(), slices.Collect(linksOf(o))
		}, errortest.Invalid()},
		"a house key put in place of the one compared, unsigned": {func(o *office) (published.Following, []published.Link) {
			was, next := o.house.Public(), newKey(o.t, 'n')
			o.write(signing.HouseKey{}.Kind(), signing.Subject, signing.HouseKey{Key: next.Public(), Before: &was, Reason: "lost"})
			o.write(signing.Certificate{}.Kind(), signing.Subject, next.Certify("office2", newKey(o.t, 'z').Public()))
			o.publish(card("104", "Nobody", "2026-12-01"))
			o.sign(newKey(o.t, 'z'))
			return o.following(), slices.Collect(linksOf(o))
		}, errortest.Refused()},
		"an office that goes on from an older copy": {func(o *office) (published.Following, []published.Link) {
			_, next, _, err := o.following().Take(o.links(0))
			if err != nil {
				o.t.Fatal(err)
			}
			o.facts = o.facts[:2]
			o.publish(card("105", "Other", "2026-12-01"))
			o.publish(card("106", "Other", "2026-12-01"))
			o.publish(card("107", "Other", "2026-12-01"))
			return next, slices.Collect(linksOf(o))[next.Seq:]
		}, errortest.Refused()},
	} {
		t.Run(name, func(t *testing.T) {
			o := newOffice(t)
			o.publish(card("102", "Beatrix Holloway", "2026-12-01"))
			o.sign(o.computer)
			f, links := one.spoil(o)
			news, next, _, err := f.Take(func(yield func(published.Link, error) bool) {
				for _, l := range links {
					if !yield(l, nil) {
						return
					}
				}
			})
			if !one.want.Met(err) {
				t.Errorf("%v, want %v", err, one.want)
			}
			if len(news) > 0 || next.Head() != f.Head() {
				t.Errorf("took over %v, up to %v", names(news), next.Head())
			}
		})
	}
}

func linksOf(o *office) iter.Seq[published.Link] {
	return func(yield func(published.Link) bool) {
		for l := range o.links(0) {
			if !yield(l) {
				return
			}
		}
	}
}

// The next key of the house is trusted where the one that was compared has signed it.
func TestTheNextKeyOfTheHouse(t *testing.T) {
	o := newOffice(t)
	next, computer := newKey(t, 'n'), newKey(t, 'd')
	o.write(signing.HouseKey{}.Kind(), signing.Subject, signing.NextHouse(o.house, next.Public(), ""))
	o.write(signing.Certificate{}.Kind(), signing.Subject, next.Certify("office2", computer.Public()))
	o.publish(card("102", "Beatrix Holloway", "2026-12-01"))
	o.sign(computer)
	for name, key := range map[string]signing.Key{"compared before": o.house, "compared after": next} {
		f := published.Following{Office: "HQ", Fingerprint: key.Public().Fingerprint()}
		if news, _, _, err := f.Take(o.links(0)); err != nil || len(news) != 1 {
			t.Errorf("%s: took over %v, %v", name, names(news), err)
		}
	}
}

// A card of the office stands in the place of the site's from its day on, until it is withdrawn.
func TestTheCardsOfADay(t *testing.T) {
	own := []elevator.Grower{{ID: "101", Name: "Own"}, {ID: "102", Name: "As the site has her"}}
	ended := card("102", "Second", "2026-12-20")
	ended.Withdrawn = "she left"
	all := []published.Received{
		{Publication: card("102", "First", "2026-12-05"), Seq: 4},
		{Publication: card("102", "Second", "2026-12-10"), Seq: 9},
		{Publication: card("102", "Second, mended", "2026-12-10"), Seq: 12},
		{Publication: ended, Seq: 14},
		{Publication: card("900", "Landlord", "2026-12-05"), Seq: 5},
	}
	for on, want := range map[string]string{
		"2026-12-04": "Own, As the site has her", "2026-12-05": "Own, First, Landlord", "2026-12-09": "Own, First, Landlord",
		"2026-12-10": "Own, Second, mended, Landlord", "2026-12-20": "Own, As the site has her, Landlord",
	} {
		var got []string
		for _, g := range published.Growers(own, all, day(on)) {
			got = append(got, g.Name)
		}
		if joined := strings.Join(got, ", "); joined != want {
			t.Errorf("on %s: %s, want %s", on, joined, want)
		}
	}
}

// On the days of an edition of the office it is in force, and on no other.
func TestTheRatesOfADay(t *testing.T) {
	examples, err := schedules.Editions()
	if err != nil {
		t.Fatal(err)
	}
	own, known := examples.ByID("corn-main-2026")
	if !known {
		t.Fatal("the example is not there")
	}
	theirs := *own
	theirs.ID, theirs.Hash = "office-edition", "0ff1ce"
	p := published.Publication{From: own.From.AddDays(40), Edition: &published.Edition{ID: theirs.ID, Hash: theirs.Hash}}
	ended := p
	ended.From, ended.Withdrawn = own.From.AddDays(60), "a slip of the pen"
	editions, err := published.Editions([]published.Received{{Publication: p, Seq: 3}, {Publication: ended, Seq: 7}}, func(string) (*rates.Edition, error) { return &theirs, nil })
	if err != nil || len(editions) != 1 {
		t.Fatalf("%d editions, %v", len(editions), err)
	}
	set := examples.Under(editions...)
	for after, want := range map[int]string{0: own.ID, 39: own.ID, 40: theirs.ID, 59: theirs.ID, 60: own.ID} {
		on := own.From.AddDays(after)
		if !own.Until.IsZero() && on.After(own.Until) {
			t.Fatalf("the example ends too early for this test: %s", own.Until)
		}
		got, err := set.On(own.Schedule, own.Commodity.ID, on)
		if err != nil || got.ID != want {
			t.Errorf("%d days on: %v, %v, want %s", after, got, err, want)
		}
	}
	if _, there := set.ByID(theirs.ID); !there || theirs.From != own.From {
		t.Error("the set does not know the edition of the office, or the edition itself was changed")
	}
}
