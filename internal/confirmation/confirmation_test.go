package confirmation

import (
	"fmt"
	"slices"
	"testing"

	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/quantity"
)

func codes(n int) []string {
	var out []string
	for i := range n {
		out = append(out, fmt.Sprint(100+i))
	}
	return out
}

// A seed draws the same depositors in whatever order they are listed, and another seed others.
func TestDrawGoesByTheSeed(t *testing.T) {
	all := codes(200)
	drawn := Draw(all, "4711", 10)
	backwards := slices.Clone(all)
	slices.Reverse(backwards)
	if again := Draw(backwards, "4711", 10); len(drawn) != 10 || !slices.Equal(drawn, again) {
		t.Errorf("drawn are %v, and again %v", drawn, again)
	}
	if slices.Equal(drawn, Draw(all, "4712", 10)) {
		t.Error("another seed draws the same")
	}
	if !slices.Equal(all, codes(200)) || len(Draw(all, "4711", 999)) != 200 {
		t.Error("drawing changes the list, or leaves some out")
	}
}

// Over many seeds everybody is drawn about as often: of 50 depositors 10 are drawn 2,000 times, so each
// 400 times, give or take 90, which is five times what chance does.
func TestDrawIsFair(t *testing.T) {
	times := map[string]int{}
	for seed := range 2_000 {
		for _, code := range Draw(codes(50), fmt.Sprint(seed), 10) {
			times[code]++
		}
	}
	for _, code := range codes(50) {
		if n := times[code]; n < 310 || n > 490 {
			t.Errorf("%s was drawn %d times", code, n)
		}
	}
}

// An answer is written to its letter; one that says nothing of a difference is not taken.
func TestAnswered(t *testing.T) {
	day := quantity.MustDate("2026-10-31")
	r := Round{Number: 1, Day: day, By: "M. Orton", Seed: "1", Of: 2, Letters: []Letter{{Number: 1, Grower: "101"}, {Number: 2, Grower: "102"}}}
	for _, c := range []struct {
		letter int
		answer Answer
		want   errortest.Want
	}{
		{3, Answer{How: Agrees, Day: day}, errortest.NotFound("3")},
		{1, Answer{How: "yes", Day: day}, errortest.Invalid("yes")},
		{1, Answer{How: Differs, Day: day, Words: " "}, errortest.Incomplete()},
		{1, Answer{How: Agrees, Day: day.AddDays(-1)}, errortest.Refused("2026-10-30")},
	} {
		if _, err := r.Answered(c.letter, c.answer); !c.want.Met(err) {
			t.Errorf("%+v to letter %d: %v, want %v", c.answer, c.letter, err, c.want)
		}
	}
	answered, err := r.Answered(2, Answer{How: Differs, Day: day.AddDays(9), Words: "1,200 bu"})
	if err != nil || len(answered.Unanswered()) != 1 || answered.Unanswered()[0].Number != 1 {
		t.Errorf("not answered are %v (%v)", answered.Unanswered(), err)
	}
	if r.Letters[1].Answer != nil {
		t.Error("the round that was there is changed")
	}
}
