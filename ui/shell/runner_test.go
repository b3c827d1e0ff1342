package shell

import (
	"context"
	"errors"
	"fmt"
	"strings"
	"sync"
	"tenthpoint/ui/model"
	"testing"

	"fyne.io/fyne/v2/test"
)

// diary records, in order, what jobs did.
type diary struct {
	mu    sync.Mutex
	lines []string
}

func (d *diary) write(format string, args ...any) {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.lines = append(d.lines, fmt.Sprintf(format, args...))
}

func (d *diary) text() string {
	d.mu.Lock()
	defer d.mu.Unlock()
	return strings.Join(d.lines, ", ")
}

func (d *diary) job(topic, name string) model.Job {
	return model.Job{
		Topic: topic,
		Do: func(ctx context.Context, report Report) error {
			d.write("work %s", name)
			report(1, 2)
			return ctx.Err()
		},
		Progress: func(done, total int) { d.write("%s %d/%d", name, done, total) },
		Done:     func(err error) { d.write("done %s %v", name, err) },
	}
}

func TestImmediateIsOverAtOnce(t *testing.T) {
	d := &diary{}
	r := NewImmediate()
	r.Run(d.job("find", "a"))
	r.Later(func() { d.write("later") })
	r.Every(0, func() { d.write("tick") })()
	equal(t, "diary", d.text(), "work a, a 1/2, done a <nil>, later")
}

func TestWorkMayFail(t *testing.T) {
	var got error
	fault := errors.New("the disk is full")
	NewImmediate().Run(model.Job{
		Do:   func(context.Context, Report) error { return fault },
		Done: func(err error) { got = err },
	})
	equal(t, "error", got, fault)
	NewImmediate().Run(model.Job{}) // nothing to do is no fault
}

// TestStaleAnswersAreDropped: only the newest question's answer arrives, in any order of
// completion.
func TestStaleAnswersAreDropped(t *testing.T) {
	d := &diary{}
	m := NewManual()
	m.Run(d.job("find", "old"))
	m.Run(d.job("count", "other"))
	m.Run(d.job("find", "new"))
	equal(t, "waiting", m.Waiting(), 3)
	m.StepAll()
	equal(t, "diary", d.text(), "work other, other 1/2, done other <nil>, work new, new 1/2, done new <nil>")
}

func TestAnswerOvertakenOnTheWay(t *testing.T) {
	d := &diary{}
	m := NewManual()
	job := d.job("find", "old")
	work := job.Do
	job.Do = func(ctx context.Context, report Report) error {
		m.Run(d.job("find", "new")) // asked again while this one works
		return work(ctx, report)
	}
	m.Run(job)
	m.StepAll()
	equal(t, "diary", d.text(), "work old, work new, new 1/2, done new <nil>")
}

func TestJobsWithoutATopicAreAlone(t *testing.T) {
	d := &diary{}
	m := NewManual()
	m.Run(d.job("", "a"))
	m.Run(d.job("", "b"))
	m.StepAll()
	equal(t, "diary", d.text(), "work a, a 1/2, done a <nil>, work b, b 1/2, done b <nil>")
}

func TestStopping(t *testing.T) {
	d := &diary{}
	m := NewManual()
	stop := m.Run(d.job("find", "a"))
	stop()
	stop()
	m.StepAll()
	equal(t, "stopped before the work", d.text(), "done a context canceled")

	d.lines = nil
	job := d.job("find", "b")
	job.Do = func(ctx context.Context, report Report) error {
		stop()
		report(1, 2) // too late to be shown
		return ctx.Err()
	}
	stop = m.Run(job)
	m.StepAll()
	equal(t, "stopped in the work", d.text(), "done b context canceled")
}

func TestEveryTicksUntilStopped(t *testing.T) {
	d := &diary{}
	m := NewManual()
	stop := m.Every(0, func() { d.write("a") })
	m.Every(0, func() { d.write("b") })
	m.Tick()
	stop()
	m.Tick()
	equal(t, "diary", d.text(), "a, b, b")
}

// TestBackground runs real goroutines. Each Done closes a channel, so nothing
// waits for a length of time.
func TestBackground(t *testing.T) {
	test.NewTempApp(t)
	r := NewBackground()
	d := &diary{}
	first, over := make(chan struct{}), make(chan struct{})
	stop := r.Run(model.Job{
		Topic: "long",
		Do:    func(ctx context.Context, _ Report) error { close(first); <-ctx.Done(); return ctx.Err() },
		Done:  func(err error) { d.write("stopped %v", err); close(over) },
	})
	<-first
	stop()
	<-over

	began, replaced, newest := make(chan struct{}), make(chan struct{}), make(chan struct{})
	r.Run(model.Job{
		Topic: "find",
		Do:    func(ctx context.Context, _ Report) error { close(began); <-ctx.Done(); close(replaced); return nil },
		Done:  func(error) { d.write("old answer") },
	})
	<-began
	r.Run(model.Job{Topic: "find", Done: func(error) { d.write("new answer"); close(newest) }})
	<-replaced
	<-newest

	later := make(chan struct{})
	r.Later(func() { close(later) })
	<-later

	ticks := make(chan struct{})
	var end func()
	count := 0
	end = r.Every(1, func() {
		if count++; count == 3 {
			close(ticks)
		}
	})
	<-ticks
	end()
	end()
	equal(t, "diary", d.text(), "stopped context canceled, new answer")
}

// TestProgressIsNotPiledUp: reports made while one is on its way only change
// what that one will say.
func TestProgressIsNotPiledUp(t *testing.T) {
	var home []func()
	d := &diary{}
	r := &runner{away: func(f func()) { f() }, home: func(f func()) { home = append(home, f) }}
	r.Run(model.Job{
		Do: func(_ context.Context, report Report) error {
			for i := range 1000 {
				report(i, 1000)
			}
			return nil
		},
		Progress: func(done, total int) { d.write("%d/%d", done, total) },
		Done:     func(error) { d.write("done") },
	})
	for _, f := range home {
		f()
	}
	equal(t, "diary", d.text(), "999/1000, done")
}

// equal fails the test unless got is want.
func equal[T comparable](t *testing.T, what string, got, want T) {
	t.Helper()
	if got != want {
		t.Errorf("%s: got %v, want %v", what, got, want)
	}
}
