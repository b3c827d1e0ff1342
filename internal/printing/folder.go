package printing

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
)

// mostSameNames bounds the search for a free name. A folder that already
// holds this many copies of one ticket is a fault to tell, not to add to.
const mostSameNames = 999

// Folder keeps each job as one file in Path, which is made when it is missing.
//
// A file appears whole or not at all: the bytes go to a hidden part-file, are
// forced to the disk, and only then take their name. An older file is never
// replaced; the second "ticket-1042" becomes "ticket-1042-2.pdf". Copies need
// no second file, so the receipt says one.
type Folder struct {
	Path string
}

// Send writes the job and returns the file's path in Receipt.Where.
func (f Folder) Send(ctx context.Context, job Job) (Receipt, error) {
	if err := errors.Join(job.Check(), ctx.Err()); err != nil {
		return Receipt{}, err
	}
	if f.Path == "" {
		return Receipt{}, errors.New("No folder is set for printed files. Choose one under Gear, printer.")
	}
	if err := os.MkdirAll(f.Path, 0o755); err != nil {
		return Receipt{}, f.fault(job, err)
	}
	part, err := writePart(f.Path, job.Bytes)
	if err != nil {
		return Receipt{}, f.fault(job, err)
	}
	path, err := takeName(part, f.Path, job.Name, job.extension())
	if err != nil {
		return Receipt{}, f.fault(job, errors.Join(err, os.Remove(part)))
	}
	return Receipt{Where: path, Copies: 1, Certain: true}, nil
}

func (f Folder) fault(job Job, err error) error {
	return fmt.Errorf("%q could not be written to the folder %s: %w. Check that the folder exists, may be written to and has room, or choose another.", job.Name, f.Path, err)
}

// writePart puts the bytes on the disk under a name nobody looks for.
func writePart(folder string, content []byte) (path string, err error) {
	part, err := os.CreateTemp(folder, ".part-*")
	if err != nil {
		return "", err
	}
	_, err = part.Write(content)
	err = errors.Join(err, part.Chmod(0o644), part.Sync(), part.Close())
	if err != nil {
		return "", errors.Join(err, os.Remove(part.Name()))
	}
	return part.Name(), nil
}

// takeName moves the part-file to the first free name. The name is claimed
// with O_EXCL before the rename: on Unix a bare rename would silently replace
// a file that another desk wrote in between.
func takeName(part, folder, name, extension string) (string, error) {
	for n := 1; n <= mostSameNames; n++ {
		path := filepath.Join(folder, numbered(name, n)+extension)
		claim, err := os.OpenFile(path, os.O_CREATE|os.O_EXCL|os.O_WRONLY, 0o644)
		if errors.Is(err, fs.ErrExist) {
			continue
		}
		if err != nil {
			return "", err
		}
		if err := errors.Join(claim.Close(), os.Rename(part, path)); err != nil {
			return "", errors.Join(err, os.Remove(path))
		}
		syncFolder(folder)
		return path, nil
	}
	return "", fmt.Errorf("%d files are already called %s%s", mostSameNames, name, extension)
}

func numbered(name string, n int) string {
	if n == 1 {
		return name
	}
	return name + "-" + strconv.Itoa(n)
}

// syncFolder makes the new name itself durable. Not every system can do it
// for a folder (Windows cannot), and the file is whole without it, so a
// failure here is no failure of the job.
func syncFolder(folder string) {
	if d, err := os.Open(folder); err == nil {
		_ = d.Sync()
		_ = d.Close()
	}
}
