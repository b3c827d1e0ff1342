package main

import (
	"context"
	"path/filepath"

	"tenthpoint/internal/spool"
)

// printer writes each paper into a folder beside the book, and on demand opens
// it on the screen.
type printer struct{ to spool.Spool }

func newPrinter(book string, view bool) printer {
	folder := filepath.Join(filepath.Dir(book), "papers")
	if view {
		return printer{spool.Viewer{Folder: folder}}
	}
	return printer{spool.Folder{Path: folder}}
}

// Print sends one paper on and says where it went.
func (p printer) Print(ctx context.Context, name string, pdf []byte) (where string, err error) {
	receipt, err := p.to.Send(ctx, spool.Job{Name: name, MIME: spool.PDF, Bytes: pdf, Copies: 1})
	return receipt.Where, err
}
