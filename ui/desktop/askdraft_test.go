package desktop

import (
	"strings"
	"tenthpoint/ui/day"
	"tenthpoint/ui/lab"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session/sessiontest"
	"tenthpoint/ui/yard"
	"testing"
)

// What is half typed into a question is there when it is asked again after a
// stop, once; given up or gone on with, it is not.
func TestHalfTypedQuestionsStandAgain(t *testing.T) {
	for name, c := range map[string]struct {
		ask   func(*sessiontest.Room)
		typed map[string]string
		whole map[string]string
	}{
		"a reference on a meter": {
			func(r *sessiontest.Room) { m := lab.NewMeters(r.Session); m.Choose("M1"); m.AskCheck() },
			map[string]string{"oven.1": "15.0", "name.1": "R-7"}, map[string]string{"meter.1": "15.1", "temperature.1": "70"},
		},
		"a new grower": {
			func(r *sessiontest.Room) { yard.NewYard(r.Session).Form().AskGrower() },
			map[string]string{"code": "777", "name": "Example Hollow"}, nil,
		},
		"the evening's remark": {
			func(r *sessiontest.Room) { day.NewDaySheet(r.Session).Close() },
			map[string]string{"remark": "the probe sticks"}, nil,
		},
		"a reason to refuse": {
			func(r *sessiontest.Room) { y := yard.NewYard(r.Session); y.Take(y.Rows()[0].ID); y.Refuse() },
			map[string]string{"reason": "must"}, nil,
		},
	} {
		t.Run(name, func(t *testing.T) {
			r := sessiontest.DemoRoom(t, 40)
			c.ask(r)
			r.Half(c.typed)
			next := r.Reopen()
			c.ask(next)
			sessiontest.WantSaid(t, next, model.Plain, "What was typed here before the stop stands here again.")
			for id, text := range c.typed {
				if got := next.ValuesOf()[id]; got != text {
					t.Errorf("%s holds %q, want %q", id, got, text)
				}
			}
			if wrong := next.Answer(c.whole); len(wrong) > 0 {
				t.Fatal(wrong)
			}
			if left := strings.Join(next.Drafts(), " "); strings.Contains(left, "ask ") {
				t.Errorf("after it was gone on with there is %q", left)
			}
		})
		t.Run(name+", given up", func(t *testing.T) {
			r := sessiontest.DemoRoom(t, 40)
			c.ask(r)
			r.Half(c.typed)
			next := r.Reopen()
			c.ask(next)
			next.Question().GivenUp()
			if left := strings.Join(next.Drafts(), " "); strings.Contains(left, "ask ") {
				t.Errorf("after it was given up there is %q", left)
			}
			c.ask(next)
			for id, text := range c.typed {
				if got := next.ValuesOf()[id]; got == text {
					t.Errorf("given up, %s still holds %q", id, got)
				}
			}
		})
	}
}
