// Package steps reads the numbered files that build the tables of a book, and tells which of them a
// book has still to go through. A book remembers the name and the hash of each: one that knows other
// steps, or more of them, belongs to another program and is refused. How a step is gone through is
// the engine's own.
package steps

import (
	"io/fs"
	"regexp"
	"strconv"

	"tenthpoint/internal/digest"
	"tenthpoint/internal/message"
)

// A Step is one file of SQL in building the tables. What a book remembers of it has no text.
type Step struct {
	Number int64
	Name   string // the file's name
	SHA256 string // of the file's text
	Text   string
}

var stepName = regexp.MustCompile(`^([0-9]{4})_[a-z0-9_]+\.sql$`)

// Read reads all steps and requires that they are numbered 1, 2, 3
// and so on.
func Read(files fs.FS) ([]Step, error) {
	names, err := fs.Glob(files, "*.sql") // in order of their names
	if err != nil {
		return nil, err
	}
	var known []Step
	for i, name := range names {
		parts := stepName.FindStringSubmatch(name)
		if parts == nil {
			return nil, message.Storage.Errorf("The migration %s is not named NNNN_what.sql.", name)
		}
		number, err := strconv.ParseInt(parts[1], 10, 64)
		if err != nil || number != int64(i+1) {
			return nil, message.Storage.Errorf("The migration %s stands where number %04d is due.", name, i+1)
		}
		text, err := fs.ReadFile(files, name)
		if err != nil {
			return nil, err
		}
		known = append(known, Step{number, name, digest.Of(text), string(text)})
	}
	return known, nil
}

// Due compares the past of the book at a place with what this program knows and returns the steps
// still to do.
func Due(path string, past, known []Step) ([]Step, error) {
	if len(past) > len(known) {
		return nil, message.Storage.Errorf(
			"The book %s belongs to a newer program: it went through %s, this program knows %d migrations. Use the newer program.",
			path, past[len(past)-1].Name, len(known))
	}
	for i, done := range past {
		ours := known[i]
		if done.Number != ours.Number || done.Name != ours.Name || done.SHA256 != ours.SHA256 {
			return nil, message.Storage.Errorf(
				"The book %s has another history than this program: its migration %d is %s (%.12s), here it is %s (%.12s). "+
					"Nothing was touched. Use the program that wrote the book, or a backup.",
				path, done.Number, done.Name, done.SHA256, ours.Name, ours.SHA256)
		}
	}
	return known[len(past):], nil
}
