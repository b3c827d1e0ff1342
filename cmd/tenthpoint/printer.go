package main

import (
	"context"
	"errors"
	"path/filepath"
	"sync"
	"time"

	"tenthpoint/internal/book/place"
	"tenthpoint/internal/message"
	"tenthpoint/internal/printing"
	"tenthpoint/ui/session"
)

// printer sends each paper the way that was chosen last. It is used from the
// window and from work beside it.
type printer struct {
	folder string // beside the book

	mu sync.Mutex
	to printing.Destination
}

// newPrinter makes a printer that writes papers into a folder beside the book, and optionally opens
// them on the screen too.
func newPrinter(book string, view bool) *printer {
	p := &printer{folder: filepath.Join(place.Beside(book), "papers")}
	p.to = printing.Folder{Path: p.folder}
	if view {
		p.to = printing.Viewer{Folder: p.folder}
	}
	return p
}

// send makes papers go another way from now on.
func (p *printer) send(way, queue string) error {
	var to printing.Destination
	switch way {
	case session.ToFolder:
		to = printing.Folder{Path: p.folder}
	case session.ToScreen:
		to = printing.Viewer{Folder: p.folder}
	case session.ToQueue:
		to = &printing.Waiting{To: printing.System{Printer: queue, Keep: p.folder}, Folder: filepath.Join(p.folder, "waiting")}
	default:
		return message.Invalid.Errorf("papers cannot go to %q", way)
	}
	p.mu.Lock()
	defer p.mu.Unlock()
	p.to = to
	return nil
}

func (p *printer) way() printing.Destination {
	p.mu.Lock()
	defer p.mu.Unlock()
	return p.to
}

// Print sends one paper on and says where it went.
func (p *printer) Print(ctx context.Context, name string, paper []byte) (where string, err error) {
	receipt, err := p.way().Send(ctx, printing.Job{Name: name, MIME: printing.KindOf(paper), Bytes: paper, Copies: 1})
	var waits printing.Waits
	switch {
	case errors.As(err, &waits):
		return "", session.PaperWaits{Why: waits.Why}
	case err == nil && receipt.Off != "":
		return receipt.Where, session.PaperWaits{Why: errors.New(receipt.Off)}
	}
	return receipt.Where, err
}

// retryEvery is the interval at which waiting papers are offered to the printer again.
const retryEvery = 30 * time.Second

// retry prints the waiting papers as soon as the printer accepts them, until ctx ends. That a paper
// waits was reported when it was printed, so further failures are not.
func (p *printer) retry(ctx context.Context) {
	tick := time.NewTicker(retryEvery)
	defer tick.Stop()
	for {
		if queue, is := p.way().(*printing.Waiting); is {
			_, _ = queue.Resume(ctx)
		}
		select {
		case <-ctx.Done():
			return
		case <-tick.C:
		}
	}
}
