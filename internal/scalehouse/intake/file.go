package intake

import (
	"io"
	"os"

	"tenthpoint/internal/imports"
	"tenthpoint/internal/message"
)

// ReadFile reads a file, and of one that does not end no more than shows that it is too long.
func ReadFile(path string) ([]byte, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, message.NotFound.Errorf("the file %s cannot be read. Check the path", message.Name(path))
	}
	defer f.Close()
	text, err := io.ReadAll(io.LimitReader(f, imports.MostBytes+1))
	if err != nil {
		return nil, message.NotFound.Errorf("the file %s cannot be read. Check the path", message.Name(path))
	}
	return text, nil
}
