package main

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"
	"strings"
	"unicode"

	"tenthpoint/internal/atomicfile"
	"tenthpoint/internal/book/place"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office/examiner"
)

// exports is the folder beside the book for files that are no papers: workbooks,
// figures for other programs.
type exports struct{ folder string }

func newExports(book string) exports {
	return exports{filepath.Join(place.Beside(book), "exports")}
}

// mostSameNames bounds the search for a free name.
const mostSameNames = 999

// Save writes a file and returns its path. An older file is never overwritten: the second
// "day.xlsx" becomes "day-2.xlsx".
func (e exports) Save(ctx context.Context, name string, data []byte) (where string, err error) {
	if err := ctx.Err(); err != nil {
		return "", err
	}
	if err := atomicfile.MakeFolder(e.folder); err != nil {
		return "", message.Storage.Errorf("the folder for files cannot be made: %w", err)
	}
	name = oneElement(name)
	ending := filepath.Ext(name)
	for n := 1; n <= mostSameNames; n++ {
		free := name
		if n > 1 {
			free = fmt.Sprintf("%s-%d%s", strings.TrimSuffix(name, ending), n, ending)
		}
		where = filepath.Join(e.folder, free)
		err = atomicfile.Create(where, data)
		if !errors.Is(err, fs.ErrExist) {
			return where, err
		}
	}
	return "", message.Storage.Errorf("there are %d files called %s in %s already. Move them away", mostSameNames, name, e.folder)
}

// SaveSet writes files into a new folder of a name. The set's hashes are its last file: a folder without
// them is not whole.
func (e exports) SaveSet(ctx context.Context, name string, files []examiner.File) (where string, err error) {
	if err := atomicfile.MakeFolder(e.folder); err != nil {
		return "", message.Storage.Errorf("the folder for files cannot be made: %w", err)
	}
	if where, err = e.newFolder(oneElement(name)); err != nil {
		return "", err
	}
	for _, f := range files {
		if err := ctx.Err(); err != nil {
			return where, err
		}
		path := filepath.Join(where, filepath.FromSlash(f.Name))
		if err := atomicfile.MakeFolder(filepath.Dir(path)); err != nil {
			return where, err
		}
		if err := atomicfile.Create(path, f.Bytes); err != nil {
			return where, err
		}
	}
	return where, nil
}

// newFolder makes a folder under the first name that is free.
func (e exports) newFolder(name string) (string, error) {
	for n := 1; n <= mostSameNames; n++ {
		free := filepath.Join(e.folder, name)
		if n > 1 {
			free = fmt.Sprintf("%s-%d", free, n)
		}
		if err := atomicfile.NewFolder(free); !errors.Is(err, fs.ErrExist) {
			return free, err
		}
	}
	return "", message.Storage.Errorf("there are %d files called %s in %s already. Move them away", mostSameNames, name, e.folder)
}

// oneElement makes a text of the book a file name that cannot leave its folder.
func oneElement(name string) string {
	name = strings.Map(func(r rune) rune {
		if unicode.IsControl(r) || strings.ContainsRune(`/\:`, r) {
			return '-'
		}
		return r
	}, name)
	return strings.ReplaceAll(name, "..", "--")
}
