package installer

import (
	"bytes"
	"debug/buildinfo"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
)

// A module is a library inside a program.
type module struct{ path, version, licence string }

// contents lists what is inside programs with its licences, as an SPDX 2.3 document of tags. It is
// read from the programs themselves, so that it cannot name what they do not contain.
func (r *release) contents(programs ...string) ([]byte, error) {
	inside, goVersion := map[module]bool{}, ""
	for _, path := range programs {
		info, err := buildinfo.ReadFile(path)
		if err != nil {
			return nil, err
		}
		goVersion = info.GoVersion
		for _, m := range info.Deps {
			if m.Replace != nil {
				m = m.Replace
			}
			inside[module{path: m.Path, version: m.Version}] = true
		}
	}
	var b bytes.Buffer
	fmt.Fprintf(&b, "SPDXVersion: SPDX-2.3\nDataLicense: CC0-1.0\nSPDXID: SPDXRef-DOCUMENT\nDocumentName: tenthpoint-%s\n", r.version)
	fmt.Fprintf(&b, "DocumentNamespace: https://tenthpoint.invalid/spdx/%s/%s\n", r.version, r.commit)
	fmt.Fprintf(&b, "Creator: Tool: tenthpoint cmd/task\nCreated: %s\n", r.at.Format("2006-01-02T15:04:05Z"))
	r.entry(&b, "tenthpoint", r.version, "Apache-2.0")
	r.entry(&b, "fonts DejaVu Sans, cut to the letters printed", "2.37", "Bitstream-Vera")
	r.entry(&b, "go standard library", goVersion, "BSD-3-Clause")
	for _, m := range sortedModules(inside) {
		licence, err := licenceOf(m)
		if err != nil {
			return nil, err
		}
		r.entry(&b, m.path, m.version, licence)
	}
	return b.Bytes(), nil
}

// entry writes one thing that is inside.
func (r *release) entry(b *bytes.Buffer, name, version, licence string) {
	id := strings.Map(func(c rune) rune {
		if c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '0' && c <= '9' || c == '.' {
			return c
		}
		return '-'
	}, name)
	fmt.Fprintf(b, "\nPackageName: %s\nSPDXID: SPDXRef-%s\nPackageVersion: %s\nPackageDownloadLocation: NOASSERTION\n", name, id, version)
	fmt.Fprintf(b, "FilesAnalyzed: false\nPackageLicenseConcluded: %s\nPackageLicenseDeclared: %s\nPackageCopyrightText: NOASSERTION\n", licence, licence)
}

func sortedModules(inside map[module]bool) []module {
	var all []module
	for m := range inside {
		all = append(all, m)
	}
	slices.SortFunc(all, func(a, b module) int { return strings.Compare(a.path+a.version, b.path+b.version) })
	return all
}

// licences are known by a phrase of their text; the first that is found counts.
var licences = []struct{ phrase, id string }{
	{"Apache License", "Apache-2.0"},
	{"Mozilla Public License", "MPL-2.0"},
	{"GNU LESSER", "LGPL-3.0-only"},
	{"GNU GENERAL", "GPL-3.0-only"},
	{"Neither the name", "BSD-3-Clause"},
	{"names of its contributors may be used", "BSD-3-Clause"},
	{"Redistributions in binary form", "BSD-2-Clause"},
	{"Permission to use, copy, modify, and/or distribute", "ISC"},
	{"Permission to use, copy, modify, and distribute", "ISC"},
	{"Permission is hereby granted, free of charge", "MIT"},
	{"This is free and unencumbered software", "Unlicense"},
	{"SIL OPEN FONT LICENSE", "OFL-1.1"},
}

// licenceOf reads the licence in the text of a module. One that is not known is a fault: nothing is
// handed out whose terms nobody has read.
func licenceOf(m module) (string, error) {
	said, err := exec.Command("go", "list", "-m", "-f", "{{.Dir}}", m.path).Output()
	if err != nil {
		return "", fmt.Errorf("the text of %s cannot be found: %w", m.path, err)
	}
	folder := strings.TrimSpace(string(said))
	found, err := filepath.Glob(filepath.Join(folder, "[LlCU][INinOo][CcLlPpNn]*"))
	if err != nil {
		return "", err
	}
	for _, path := range found {
		text, err := os.ReadFile(path)
		if err != nil {
			continue // a folder of that name
		}
		if id := licenceIn(string(text)); id != "" {
			return id, nil
		}
	}
	return "", fmt.Errorf("%s %s has no licence that is known (looked into %v)", m.path, m.version, found)
}

func licenceIn(text string) string {
	words := strings.Join(strings.Fields(text), " ")
	for _, l := range licences {
		if strings.Contains(words, l.phrase) {
			return l.id
		}
	}
	return ""
}
