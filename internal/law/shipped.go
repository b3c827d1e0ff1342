package law

import (
	"io/fs"
	"path"
	"sync"

	"tenthpoint/internal/message"
	"tenthpoint/internal/tomlfile"
	shipped "tenthpoint/schedules/law"
)

// OpenAll reads the heading of every TOML file in the folders of a file system.
// The error names every mistake in every heading.
func OpenAll(files fs.FS) ([]*File, error) {
	var out []*File
	var problems tomlfile.Problems
	err := fs.WalkDir(files, ".", func(name string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() || path.Ext(name) != ".toml" {
			return err
		}
		text, err := fs.ReadFile(files, name)
		if err != nil {
			return err
		}
		f, err := Open(name, text)
		if wrong, ok := err.(tomlfile.Problems); ok {
			problems = append(problems, wrong...)
			return nil
		}
		out = append(out, f)
		return err
	})
	if err != nil {
		return nil, err
	}
	return out, problems.Err()
}

// Shipped are the files inside the program. One that cannot be read is a programming error.
var Shipped = sync.OnceValue(func() []*File {
	files, err := OpenAll(shipped.Files)
	if err != nil {
		panic("law: the files inside the program: " + err.Error())
	}
	return files
})

// First is the law of every ticket that keeps none: the files the program had
// when tickets began to keep theirs. They are part of the program for ever,
// listed with their hashes in schedules/law/first.txt.
var First = sync.OnceValue(func() Law {
	manifest, err := shipped.Files.ReadFile("first.txt")
	if err != nil {
		panic("law: " + err.Error())
	}
	l, err := resolve(string(manifest), shippedFile)
	if err != nil {
		panic("law: a file of the first law was altered; write a new file with a later first day: " + err.Error())
	}
	return l
})

func shippedFile(hash, id string) (*File, error) {
	for _, f := range Shipped() {
		if f.Hash == hash {
			return f, nil
		}
	}
	return nil, message.Storage.Errorf("no file of the program has the hash of the rules %s", id)
}
