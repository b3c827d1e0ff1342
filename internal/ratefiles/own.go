package ratefiles

import (
	"path/filepath"

	"tenthpoint/internal/atomicfile"
	"tenthpoint/internal/message"
	"tenthpoint/internal/rates"
)

// WithOwn checks an edition that is being made against those in the folder of the house, as if it were
// a file there, and returns the set they would be together.
func WithOwn(folder string, e *rates.Edition) (*rates.Set, error) {
	files, err := EditionFiles(folder)
	if err != nil {
		return nil, err
	}
	own, err := ReadEditions(files)
	if err != nil {
		return nil, err
	}
	return WithExamples(append(own, e))
}

// FileOf is the path of an edition in the folder of the house.
func FileOf(folder, id string) string { return filepath.Join(folder, id+".toml") }

// WriteOwn writes an edition into the folder of the house, as a new file.
func WriteOwn(folder string, e *rates.Edition) error {
	if folder == "" {
		return message.Refused.Errorf("this book has no folder for rates of its own, so edition %s cannot be kept", e.ID)
	}
	if err := atomicfile.MakeFolder(folder); err != nil {
		return message.Errorf("the folder of rates cannot be made: %w", err)
	}
	if err := atomicfile.Create(FileOf(folder, e.ID), e.Text); err != nil {
		return message.Errorf("edition %s cannot be written: %w", e.ID, err)
	}
	return nil
}
