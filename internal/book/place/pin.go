package place

import (
	"errors"
	"io/fs"
	"os"

	"tenthpoint/internal/message"
)

// A Pin remembers which files were opened at a path. A name in a folder can be moved, deleted or
// given to another file under an open program; the program then writes on, into a file that nobody
// will find again. The zero Pin finds nothing wrong.
type Pin struct {
	path  string
	files map[string]os.FileInfo
}

// PinOf remembers the file at a path, and those beside it whose names end with one of endings, as
// far as they are there.
func PinOf(path string, endings ...string) (Pin, error) {
	p := Pin{path, map[string]os.FileInfo{}}
	for _, ending := range append([]string{""}, endings...) {
		info, err := os.Stat(path + ending)
		if errors.Is(err, fs.ErrNotExist) && ending != "" {
			continue
		}
		if err != nil {
			return Pin{}, err
		}
		os.SameFile(info, info) // Windows reads the number of a file when it is first compared
		p.files[path+ending] = info
	}
	return p, nil
}

// Lost says that the path no longer leads to the files that were opened there, and why.
func (p Pin) Lost() error {
	for path, opened := range p.files {
		info, err := os.Stat(path)
		switch {
		case errors.Is(err, fs.ErrNotExist):
			return message.Storage.Errorf("the book %s is no longer in its place: %s was moved or deleted while it was open. Nothing can be entered. Save a copy first, then put the file back or open the copy", p.path, path)
		case err != nil:
			return message.Storage.Errorf("the book %s can no longer be looked at, so nothing can be entered (%w). Save a copy of it", p.path, err)
		case !os.SameFile(opened, info):
			return message.Storage.Errorf("another file was put in the place of the book %s while it was open. Nothing can be entered. Save a copy first, then look which of the two is the newer", p.path)
		}
	}
	return nil
}
