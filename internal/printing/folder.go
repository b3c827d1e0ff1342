package printing

import (
	"context"
	"errors"
	"io/fs"
	"path/filepath"
	"strconv"

	"tenthpoint/internal/atomicfile"
	"tenthpoint/internal/message"
)

// mostSameNames limits the search for a free name. A folder with this many copies of one ticket is
// an error to report.
const mostSameNames = 999

// Folder writes each job as a file to Path, which is made when it is missing.
//
// A file appears whole or not at all. An older file is never replaced; the second "ticket-1042"
// becomes "ticket-1042-2.pdf". Copies need no second file, so the receipt says one.
type Folder struct {
	Path string
}

// Send writes the job and returns the file's path in Receipt.Where.
func (f Folder) Send(ctx context.Context, job Job) (Receipt, error) {
	if err := errors.Join(job.Check(), ctx.Err()); err != nil {
		return Receipt{}, err
	}
	if f.Path == "" {
		return Receipt{}, message.Incomplete.Errorf("No folder is set for printed files. Choose one under Equipment, printer.")
	}
	if err := atomicfile.MakeFolder(f.Path); err != nil {
		return Receipt{}, f.fault(job, err)
	}
	path, err := create(f.Path, job)
	if err != nil {
		return Receipt{}, f.fault(job, err)
	}
	return Receipt{Where: path, Copies: 1, Certain: true}, nil
}

func (f Folder) fault(job Job, err error) error {
	return message.Storage.Errorf("%q could not be written to the folder %s: %w. Check that the folder exists, may be written to and has room, or choose another.", job.Name, f.Path, err)
}

// create writes the job under the first free name.
func create(folder string, job Job) (string, error) {
	for n := 1; n <= mostSameNames; n++ {
		path := filepath.Join(folder, numbered(job.Name, n)+job.extension())
		if err := atomicfile.Create(path, job.Bytes); !errors.Is(err, fs.ErrExist) {
			return path, err
		}
	}
	return "", message.Device.Errorf("%d files are already called %s%s", mostSameNames, job.Name, job.extension())
}

func numbered(name string, n int) string {
	if n == 1 {
		return name
	}
	return name + "-" + strconv.Itoa(n)
}
