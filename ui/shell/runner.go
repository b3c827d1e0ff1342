package shell

import (
	"context"
	"sync"
	"tenthpoint/ui/model"
	"time"

	"fyne.io/fyne/v2"
)

// Report reports progress: done of total.
type Report = func(done, total int)

// Runner runs jobs. Views are given one and never start a goroutine.
type Runner interface {
	// Run starts a job and returns the function that stops it.
	Run(job model.Job) (stop func())
	// Later calls a function on the user interface after the current event, for example to focus a
	// part that is only being shown.
	Later(f func())
	// Every calls a function on the user interface again and again until
	// stopped: how long a truck has waited.
	Every(pause time.Duration, f func()) (stop func())
}

// NewBackground makes the runner of a real window.
func NewBackground() Runner {
	return &runner{
		away: func(f func()) { go f() },
		home: fyne.Do,
		every: func(pause time.Duration, f func()) func() {
			ticker, end := time.NewTicker(pause), make(chan struct{})
			go func() {
				for {
					select {
					case <-ticker.C:
						fyne.Do(f)
					case <-end:
						return
					}
				}
			}()
			return sync.OnceFunc(func() { ticker.Stop(); close(end) })
		},
	}
}

// NewImmediate makes a runner for tests: a job is over when Run returns, and
// Every never fires.
func NewImmediate() Runner {
	now := func(f func()) { f() }
	return &runner{away: now, home: now, every: func(time.Duration, func()) func() { return func() {} }}
}

// Manual is a runner for tests of intermediate states: jobs wait until they are stepped.
type Manual struct {
	runner
	waiting []func()
	ticking []*func()
}

// NewManual makes a runner that does nothing until told to.
func NewManual() *Manual {
	m := &Manual{}
	m.away = func(f func()) { m.waiting = append(m.waiting, f) }
	m.home = func(f func()) { f() }
	m.every = func(_ time.Duration, f func()) func() {
		m.ticking = append(m.ticking, &f)
		return func() { f = nil }
	}
	return m
}

// Step runs what has waited longest and reports whether there was anything.
func (m *Manual) Step() bool {
	if len(m.waiting) == 0 {
		return false
	}
	next := m.waiting[0]
	m.waiting = m.waiting[1:]
	next()
	return true
}

// StepAll runs all pending steps, also those they add.
func (m *Manual) StepAll() {
	for m.Step() {
	}
}

// Waiting returns the number of pending steps.
func (m *Manual) Waiting() int { return len(m.waiting) }

// Tick lets every Every fire once.
func (m *Manual) Tick() {
	for _, f := range m.ticking {
		if *f != nil {
			(*f)()
		}
	}
}

// runner runs jobs with a way to leave the user interface and one to come back.
type runner struct {
	away  func(func())
	home  func(func())
	every func(time.Duration, func()) func()

	mu     sync.Mutex
	newest map[string]*run // by topic
}

// run is one job under way. Its fields are only touched under the runner's lock.
type run struct {
	cancel      context.CancelFunc
	stopped     bool // by a person: Done is still due
	done, total int  // the newest progress
	told        bool // and that it is on its way to the user interface
}

func (r *runner) Run(job model.Job) (stop func()) {
	ctx, cancel := context.WithCancel(context.Background())
	mine := &run{cancel: cancel}
	r.mu.Lock()
	if r.newest == nil {
		r.newest = map[string]*run{}
	}
	if older := r.newest[job.Topic]; older != nil {
		older.cancel()
	}
	if job.Topic != "" {
		r.newest[job.Topic] = mine
	}
	r.mu.Unlock()
	r.away(func() { r.work(ctx, mine, job) })
	return func() {
		r.mu.Lock()
		mine.stopped = true
		r.mu.Unlock()
		cancel()
	}
}

// work is the part away from the user interface.
func (r *runner) work(ctx context.Context, mine *run, job model.Job) {
	defer mine.cancel()
	err := ctx.Err()
	if err == nil && job.Do != nil {
		err = job.Do(ctx, func(done, total int) { r.report(mine, job, done, total) })
	}
	if r.wasStopped(mine) {
		err = context.Canceled
	}
	r.home(func() { r.finish(mine, job, err) })
}

// report sends progress to the user interface. While one report is on its way further ones only
// replace it, so that work may report as often as it likes.
func (r *runner) report(mine *run, job model.Job, done, total int) {
	r.mu.Lock()
	waiting := mine.told
	mine.done, mine.total, mine.told = done, total, true
	r.mu.Unlock()
	if waiting || job.Progress == nil {
		return
	}
	r.home(func() {
		r.mu.Lock()
		done, total, stopped := mine.done, mine.total, mine.stopped
		mine.told = false
		r.mu.Unlock()
		if !stopped && r.fresh(job.Topic, mine) {
			job.Progress(done, total)
		}
	})
}

// finish is the part back on the user interface. A stale answer ends here.
func (r *runner) finish(mine *run, job model.Job, err error) {
	if !r.fresh(job.Topic, mine) {
		return
	}
	r.mu.Lock()
	delete(r.newest, job.Topic)
	r.mu.Unlock()
	if job.Done != nil {
		job.Done(err)
	}
}

func (r *runner) fresh(topic string, mine *run) bool {
	r.mu.Lock()
	defer r.mu.Unlock()
	return topic == "" || r.newest[topic] == mine
}

func (r *runner) wasStopped(mine *run) bool {
	r.mu.Lock()
	defer r.mu.Unlock()
	return mine.stopped
}

func (r *runner) Later(f func()) { r.away(func() { r.home(f) }) }

func (r *runner) Every(pause time.Duration, f func()) (stop func()) { return r.every(pause, f) }
