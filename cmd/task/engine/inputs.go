package engine

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
)

// part is a file that the engine is made of, or a module outside the repository by its version.
type part struct {
	name string
	data []byte
}

// listed is a package as `go list` describes it.
type listed struct {
	Dir, ImportPath     string
	Standard            bool
	GoFiles, EmbedFiles []string
	Module              *struct {
		Path, Version string
		Main          bool
	}
}

// inputs are all parts of the engine, in one order.
func inputs(root string) ([]part, error) {
	out, err := goTool(root, "list", "-deps", "-json=Dir,ImportPath,Standard,GoFiles,EmbedFiles,Module", command)
	if err != nil {
		return nil, err
	}
	var parts []part
	for from := json.NewDecoder(bytes.NewReader(out)); ; {
		var p listed
		if err := from.Decode(&p); errors.Is(err, io.EOF) {
			break
		} else if err != nil {
			return nil, err
		}
		more, err := p.parts()
		if err != nil {
			return nil, err
		}
		parts = append(parts, more...)
	}
	parts = append(parts, part{"flags", fmt.Append(nil, flags)})
	slices.SortFunc(parts, func(a, b part) int { return bytes.Compare([]byte(a.name), []byte(b.name)) })
	return parts, nil
}

func (p listed) parts() ([]part, error) {
	switch {
	case p.Standard:
		return nil, nil
	case p.Module != nil && !p.Module.Main:
		return []part{{p.ImportPath, []byte(p.Module.Path + " " + p.Module.Version)}}, nil
	}
	var out []part
	for _, name := range slices.Concat(p.GoFiles, p.EmbedFiles) {
		data, err := os.ReadFile(filepath.Join(p.Dir, name))
		if err != nil {
			return nil, err
		}
		out = append(out, part{p.ImportPath + "/" + filepath.ToSlash(name), data})
	}
	return out, nil
}

// sumOf is the hash of all parts.
func sumOf(parts []part) string {
	sum := sha256.New()
	for _, p := range parts {
		fmt.Fprintf(sum, "%s %d\n", p.name, len(p.data))
		sum.Write(p.data)
	}
	return hex.EncodeToString(sum.Sum(nil))
}
