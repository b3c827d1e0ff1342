package installer

import (
	"bytes"
	"encoding/binary"
	"image"
	"image/png"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// Parts are chosen by name, in their own order; a name that is none is refused.
func TestChoose(t *testing.T) {
	chosen, err := choose("tar,deb")
	if err != nil || len(chosen) != 2 || chosen[0].name != "deb" || chosen[1].name != "tar" {
		t.Errorf("chosen are %v, %v", chosen, err)
	}
	if all, err := choose(""); err != nil || len(all) != len(parts) {
		t.Errorf("without a choice: %d parts, %v", len(all), err)
	}
	if _, err := choose("deb,msi"); err == nil {
		t.Error("a part that is none was taken")
	}
}

// The number of the release is read from the program's own text.
func TestReleaseNumber(t *testing.T) {
	path := filepath.Join(t.TempDir(), "version.go")
	if err := put(path, []byte("package version\n\nconst Number = \"1.20.3\"\n")); err != nil {
		t.Fatal(err)
	}
	if got, err := releaseNumber(path); err != nil || got != "1.20.3" {
		t.Errorf("the number is %q, %v", got, err)
	}
	if _, err := releaseNumber("/dev/null"); err == nil {
		t.Error("a text without a number was taken")
	}
	if _, err := releaseNumber("../../../internal/version/version.go"); err != nil {
		t.Errorf("the program's own: %v", err)
	}
}

// What the files leave open is filled everywhere: no mark is left.
func TestFilesAreFilledWhole(t *testing.T) {
	r := &release{version: "1.2.3", commit: "abc", at: time.Date(2026, 11, 30, 12, 0, 0, 0, time.UTC)}
	more := map[string][]string{
		"control":         {"@NEEDS@", "libc6", "@PROCESSOR@", "amd64", "@SIZE@", "1"},
		"tenthpoint.spec": {"@NEEDS@", "libc", "@ROOT@", "/r"},
		"windows.rc":      {"@ICON@", "i", "@PROGRAM@", "tenth", "@COMMAS@", "1,2,3"},
		"windows.nsi":     {"@OUT@", "o", "@ICON@", "i", "@FOLDER@", "f"},
	}
	all, err := files.ReadDir("files")
	if err != nil || len(all) < 8 {
		t.Fatalf("%d files, %v", len(all), err)
	}
	for _, f := range all {
		text, err := r.filled(f.Name(), more[f.Name()]...)
		if err != nil {
			t.Fatal(err)
		}
		for _, mark := range []string{"@VERSION@", "@DATE@", "@NEEDS@", "@ROOT@", "@OUT@", "@ICON@", "@FOLDER@", "@COMMIT@", "@MAILDATE@", "@RPMDATE@"} {
			if strings.Contains(text, mark) {
				t.Errorf("%s still has %s", f.Name(), mark)
			}
		}
	}
}

// An icon holds its pictures where its entries say.
func TestIconHoldsItsPictures(t *testing.T) {
	sizes := []int{16, 256}
	var pictures [][]byte
	for _, size := range sizes {
		var b bytes.Buffer
		if err := png.Encode(&b, image.NewGray(image.Rect(0, 0, size, size))); err != nil {
			t.Fatal(err)
		}
		pictures = append(pictures, b.Bytes())
	}
	icon := iconOf(sizes, pictures)
	for i, size := range sizes {
		entry := icon[6+16*i:]
		length, at := binary.LittleEndian.Uint32(entry[8:]), binary.LittleEndian.Uint32(entry[12:])
		picture, err := png.DecodeConfig(bytes.NewReader(icon[at : at+length]))
		if err != nil || picture.Width != size {
			t.Errorf("picture %d is %d wide, %v", i, picture.Width, err)
		}
		if int(entry[0]) != size%256 {
			t.Errorf("entry %d says %d", i, entry[0])
		}
	}
}

// Licences are told by their text; a text that is none is not guessed at.
func TestLicenceIn(t *testing.T) {
	for text, want := range map[string]string{
		"Permission is hereby granted, free of\ncharge, to any": "MIT",
		"Redistributions in binary form must. Neither the name": "BSD-3-Clause",
		"Redistributions in binary form must reproduce":         "BSD-2-Clause",
		"All rights reserved.":                                  "",
	} {
		if got := licenceIn(text); got != want {
			t.Errorf("%q is %q, want %q", text, got, want)
		}
	}
}

// Checksums are those of the files.
func TestChecksums(t *testing.T) {
	r := &release{out: t.TempDir()}
	if err := put(r.result("a"), []byte("abc")); err != nil {
		t.Fatal(err)
	}
	if err := r.checksums(); err != nil {
		t.Fatal(err)
	}
	got, err := os.ReadFile(filepath.Join(r.out, "SHA256SUMS"))
	if want := "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad  a\n"; err != nil || string(got) != want {
		t.Errorf("the sums are %q, %v", got, err)
	}
}
