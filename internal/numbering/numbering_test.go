package numbering_test

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"tenthpoint/internal/message"
	"tenthpoint/internal/numbering"
)

func TestRanges(t *testing.T) {
	for want, numbers := range map[string][]int64{
		"": nil, "4": {4}, "4 to 5": {4, 5}, "1, 3 to 6, 9": {1, 3, 4, 5, 6, 9},
	} {
		if got := numbering.Ranges(numbers).String(); got != want {
			t.Errorf("%v is written %q, want %q", numbers, got, want)
		}
	}
}

func TestWhatCannotBePassedOver(t *testing.T) {
	good := numbering.Passed{Series: numbering.Ticket, First: 5, Last: 7, Reason: "the disk failed"}
	if err := good.Check(); err != nil {
		t.Error(err)
	}
	for name, spoil := range map[string]func(*numbering.Passed){
		"given out already": func(p *numbering.Passed) { p.Last = 4 },
		"misread":           func(p *numbering.Passed) { p.Last = p.First + numbering.Most },
		"on no paper":       func(p *numbering.Passed) { p.Series = numbering.Load },
		"without a reason":  func(p *numbering.Passed) { p.Reason = "" },
	} {
		p := good
		spoil(&p)
		if kind := message.KindOf(p.Check()); kind == "" {
			t.Errorf("numbers %s are passed over: %+v", name, p)
		}
	}
}

// Each number passed over is in the book, lost or missing, and one thing only.
func TestAbsent(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		first := rapid.Int64Range(1, 50).Draw(t, "first")
		p := numbering.Passed{Series: numbering.Ticket, First: first, Last: first + rapid.Int64Range(0, 30).Draw(t, "more")}
		other := numbering.Passed{Series: numbering.Sample, First: 1, Last: 99}
		var lost []numbering.Lost
		in := map[int64]bool{}
		var want, declared []int64
		for n := p.First; n <= p.Last; n++ {
			switch rapid.SampledFrom([]string{"in", "lost", "missing"}).Draw(t, "what") {
			case "in":
				in[n] = true
			case "lost":
				lost = append(lost, numbering.Lost{Number: n})
				declared = append(declared, n)
			default:
				want = append(want, n)
			}
		}
		missing, gone := numbering.Absent([]numbering.Passed{other, p}, lost, func(n int64) bool { return in[n] })
		if !slices.Equal(missing, want) || !slices.Equal(gone, declared) {
			t.Errorf("missing are %v and lost %v, want %v and %v", missing, gone, want, declared)
		}
	})
}
