package printing

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"sync"

	"tenthpoint/internal/atomicfile"
	"tenthpoint/internal/message"
)

// Waiting is a spool folder: it keeps the jobs a destination did not accept, and sends them in
// order as soon as it accepts jobs again. So a printer that is off loses no paper, and nobody has
// to remember which ticket it was.
//
// A job that may have been taken is not kept, or it would print twice: that is one
// whose sending was stopped.
type Waiting struct {
	To     Destination
	Folder string

	mu sync.Mutex
}

// Waits is the error of a job that is kept and prints later.
type Waits struct {
	Job string
	Why error
}

func (w Waits) Error() string {
	return message.Errorf("%q waits until the printer takes it: %w", w.Job, w.Why).Error()
}

func (w Waits) Unwrap() error { return w.Why }

// Send sends the waiting jobs, then the new one; a job that is not accepted is kept, and the error
// is a [Waits].
func (w *Waiting) Send(ctx context.Context, job Job) (Receipt, error) {
	if err := job.Check(); err != nil {
		return Receipt{}, err
	}
	w.mu.Lock()
	defer w.mu.Unlock()
	_, err := w.resume(ctx)
	if err == nil {
		var receipt Receipt
		if receipt, err = w.To.Send(ctx, job); err == nil {
			return receipt, nil
		}
	}
	if ctx.Err() != nil {
		return Receipt{}, err
	}
	if kept := w.keep(job); kept != nil {
		return Receipt{}, errors.Join(err, kept)
	}
	return Receipt{}, Waits{job.Name, err}
}

// Resume sends the waiting jobs, the oldest first, and returns how many were accepted. It stops at
// the first that is not.
func (w *Waiting) Resume(ctx context.Context) (taken int, err error) {
	w.mu.Lock()
	defer w.mu.Unlock()
	return w.resume(ctx)
}

// Jobs lists the waiting jobs, in order.
func (w *Waiting) Jobs() ([]string, error) {
	w.mu.Lock()
	defer w.mu.Unlock()
	files, err := w.files()
	names := make([]string, len(files))
	for i, f := range files {
		names[i] = f.job.Name
	}
	return names, err
}

func (w *Waiting) resume(ctx context.Context) (taken int, err error) {
	files, err := w.files()
	if err != nil {
		return 0, err
	}
	for _, f := range files {
		if f.job.Bytes, err = os.ReadFile(f.path); err != nil {
			return taken, err
		}
		if _, err = w.To.Send(ctx, f.job); err != nil {
			return taken, err
		}
		if err = os.Remove(f.path); err != nil {
			return taken, err
		}
		taken++
	}
	return taken, nil
}

// waitingFile is a kept job without its bytes. Number, copies and name are in the
// name of the file, "000017-1x-ticket-1042.pdf", so that a person finds it too.
type waitingFile struct {
	path   string
	number int
	job    Job
}

func (w *Waiting) files() (files []waitingFile, err error) {
	entries, err := os.ReadDir(w.Folder)
	if errors.Is(err, os.ErrNotExist) {
		return nil, nil
	}
	for _, e := range entries {
		if f, ok := parseWaiting(e.Name()); ok {
			f.path = filepath.Join(w.Folder, e.Name())
			files = append(files, f)
		}
	}
	slices.SortFunc(files, func(a, b waitingFile) int { return a.number - b.number })
	return files, err
}

func parseWaiting(name string) (f waitingFile, ok bool) {
	number, rest, _ := strings.Cut(name, "-")
	copies, rest, found := strings.Cut(rest, "x-")
	if !found {
		return f, false
	}
	for _, mime := range []string{PDF, Text, Roll} {
		bare, is := strings.CutSuffix(rest, Job{MIME: mime}.extension())
		if !is {
			continue
		}
		var errs [2]error
		f.number, errs[0] = strconv.Atoi(number)
		f.job = Job{Name: bare, MIME: mime}
		f.job.Copies, errs[1] = strconv.Atoi(copies)
		return f, errors.Join(errs[:]...) == nil
	}
	return f, false
}

func (w *Waiting) keep(job Job) error {
	files, err := w.files()
	if err != nil {
		return err
	}
	number := 1
	if n := len(files); n > 0 {
		number = files[n-1].number + 1
	}
	if err := atomicfile.MakeFolder(w.Folder); err != nil {
		return err
	}
	name := fmt.Sprintf("%06d-%dx-%s%s", number, job.Copies, job.Name, job.extension())
	return atomicfile.Create(filepath.Join(w.Folder, name), job.Bytes)
}
