package journal

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"iter"
	"slices"
	"strings"
	"tenthpoint/internal/message"
	"testing"

	"pgregory.net/rapid"
)

// chain makes n facts that follow each other.
func chain(n int) []Fact {
	var facts []Fact
	var last *Fact
	for i := range n {
		d := weighed()
		d.Subject = fmt.Sprintf("load %d", i+1)
		f := Link(last, d)
		facts, last = append(facts, f), &f
	}
	return facts
}

func stream(facts []Fact) iter.Seq2[Fact, error] {
	return func(yield func(Fact, error) bool) {
		for _, f := range facts {
			if !yield(f, nil) {
				return
			}
		}
	}
}

func TestGenesisIsTheHashItClaimsToBe(t *testing.T) {
	sum := sha256.Sum256([]byte("tenthpoint journal, before the first fact"))
	if hex.EncodeToString(sum[:]) != Genesis {
		t.Errorf("Genesis is %s, the text gives %x", Genesis, sum)
	}
}

// The spelling is what an examiner would redo by hand, written out here again, without the code
// under test.
func TestHashOfTheFirstFact(t *testing.T) {
	part := func(text string) string {
		return "\x00\x00\x00\x00\x00\x00\x00" + string(rune(len(text))) + text
	}
	sum := sha256.Sum256([]byte(part("tenthpoint fact, form 1") + part(Genesis) +
		part("\x00\x00\x00\x00\x00\x00\x00\x01") +
		part("2025-10-04T14:12:09Z") + part("A. Clerk") + part("scale house") +
		part("gross weighed") + part("load 12") + part(`{"gross":"52300 lb"}`)))
	if got := Link(nil, weighed()).Hash; got != hex.EncodeToString(sum[:]) {
		t.Errorf("got %s, want %x", got, sum)
	}
}

func TestCheckFindsASoundChainSound(t *testing.T) {
	for _, n := range []int{0, 1, 5} {
		problems, count, err := Check(stream(chain(n)))
		if len(problems) > 0 || count != int64(n) || err != nil {
			t.Errorf("%d facts: %q, %d, %v", n, problems, count, err)
		}
	}
}

func TestCheckNamesEveryBreak(t *testing.T) {
	cases := map[string]struct {
		harm func([]Fact) []Fact
		want []string
	}{
		"a body changed": {
			func(f []Fact) []Fact { f[2].Body = []byte(`{"gross":"62300 lb"}`); return f },
			[]string{`Fact 3 ("gross weighed" of "load 3") was changed`},
		},
		"a body changed and its hash made to fit": {
			func(f []Fact) []Fact {
				f[2].Body = []byte(`{"gross":"62300 lb"}`)
				f[2].Hash = f[2].sum()
				return f
			},
			[]string{"Fact 4 does not follow fact 3"},
		},
		"a letter moved from one field to the next": {
			func(f []Fact) []Fact { f[1].Who, f[1].Desk = "A. Cler", "kscale house"; return f },
			[]string{"Fact 2 ("},
		},
		"one taken out": {
			func(f []Fact) []Fact { return slices.Delete(f, 1, 2) },
			[]string{"Fact 2 is missing: the next one in the book is fact 3"},
		},
		"two taken out": {
			func(f []Fact) []Fact { return slices.Delete(f, 1, 3) },
			[]string{"Facts 2 to 3 are missing: the next one in the book is fact 4"},
		},
		"the first taken out": {
			func(f []Fact) []Fact { return f[1:] },
			[]string{"Fact 1 is missing"},
		},
		"one taken out and the rest renumbered": {
			func(f []Fact) []Fact {
				f = slices.Delete(f, 1, 2)
				for i := range f {
					f[i].Seq = int64(i + 1)
				}
				return f
			},
			[]string{"Fact 2 does not follow fact 1", "Fact 2 (", "Fact 3 (", "Fact 4 ("},
		},
		"two changed places": {
			func(f []Fact) []Fact { f[1], f[2] = f[2], f[1]; return f },
			[]string{"Fact 2 is missing", "Fact 2 stands where fact 4 is due", "Fact 3 is missing"},
		},
		"another chain's first": {
			func(f []Fact) []Fact { f[0].Prev = f[3].Hash; f[0].Hash = f[0].sum(); return f },
			[]string{"Fact 1 is the first but does not start the chain", "Fact 2 does not follow fact 1"},
		},
		"two faults far apart": {
			func(f []Fact) []Fact { f[0].At = "2025-10-04T14:12:08Z"; f[4].Kind = "tare weighed"; return f },
			[]string{"Fact 1 (", "Fact 5 ("},
		},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			problems, _, err := Check(stream(c.harm(chain(5))))
			if err != nil || len(problems) != len(c.want) {
				t.Fatalf("got %q, %v, want %d problems", problems, err, len(c.want))
			}
			for i, want := range c.want {
				if !strings.Contains(problems[i].String(), want) {
					t.Errorf("problem %d is %q, want %q", i, problems[i], want)
				}
			}
		})
	}
}

func TestCheckPassesOnWhatKeptItFromReading(t *testing.T) {
	torn := errors.New("the disk is gone")
	_, count, err := Check(func(yield func(Fact, error) bool) {
		if yield(chain(1)[0], nil) {
			yield(Fact{}, torn)
		}
	})
	if !errors.Is(err, torn) || count != 1 {
		t.Errorf("got %v after %d facts", err, count)
	}
}

// Any byte of any fact, changed in any way, is found, and the fact is named.
func TestCheckFindsAnyByte(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		facts := chain(4)
		i := rapid.IntRange(0, 3).Draw(t, "fact")
		f := &facts[i]
		body := string(f.Body)
		field := rapid.SampledFrom([]*string{
			&f.At, &f.Who, &f.Desk, &f.Kind, &f.Subject, &body, &f.Prev, &f.Hash,
		}).Draw(t, "field")
		bytes := []byte(*field)
		at := rapid.IntRange(0, len(bytes)-1).Draw(t, "byte")
		bytes[at] ^= rapid.ByteRange(1, 255).Draw(t, "change")
		*field = string(bytes)
		f.Body = []byte(body)
		problems, _, _ := Check(stream(facts))
		if !slices.ContainsFunc(problems, func(p message.Text) bool {
			return strings.HasPrefix(p.String(), fmt.Sprintf("Fact %d ", i+1))
		}) {
			t.Fatalf("fact %d was changed, found: %q", i+1, problems)
		}
	})
}

func BenchmarkLink(b *testing.B) {
	last := Link(nil, weighed())
	for b.Loop() {
		last = Link(&last, weighed())
	}
}

func BenchmarkProblems(b *testing.B) {
	d := weighed()
	d.Body = []byte(`{"driver_on":false,"gross":"52300 lb","scale":"north","source":"indicator","trailer":"","truck":"blue"}`)
	for b.Loop() {
		if len(d.Problems()) > 0 {
			b.Fatal("refused")
		}
	}
}
