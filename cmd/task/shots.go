package main

import (
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"

	"tenthpoint/cmd/task/toolchain"
)

// shotsVariable names the folder that the tests called TestShots write their
// pictures and papers into. Unset, they write into a folder of their own.
const shotsVariable = "TENTHPOINT_SHOTS"

// picturedPackages draw something a person should look at.
var picturedPackages = []string{"./ui/...", "./internal/scaleticket/sheet", "./internal/daysheet"}

// shotsChore writes a picture of every screen and paper into a folder.
func shotsChore(args []string) error {
	if len(args) != 1 {
		return errors.New("name the folder for the pictures: go run ./cmd/task shots DIR")
	}
	dir, err := filepath.Abs(args[0])
	if err != nil {
		return err
	}
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return err
	}
	env := append(testLanguage(), shotsVariable+"="+dir)
	env = append(env, toolchain.WithoutCgo...)
	line := append([]string{"test", "-count=1", "-run", "^TestShots"}, picturedPackages...)
	drawn := toolchain.Go(env, line...).Run()
	if drawn != nil {
		// What the other tests drew is still worth a look.
		drawn = fmt.Errorf("some pictures were not drawn: %w", drawn)
	}
	return errors.Join(drawn, picturePapers(dir), listPictures(dir))
}

// picturePapers turns each page of each PDF in dir into a PNG beside it.
func picturePapers(dir string) error {
	papers, err := filepath.Glob(filepath.Join(dir, "*.pdf"))
	if err != nil || len(papers) == 0 {
		return err
	}
	if err := provide(paperNeeds); err != nil {
		toolchain.Say("The papers stay PDF only. %v", err)
		return nil
	}
	var faults []error
	for _, paper := range papers {
		out, err := exec.Command("pdftoppm", "-png", "-r", "130", paper, strings.TrimSuffix(paper, ".pdf")).CombinedOutput()
		if err != nil {
			faults = append(faults, fmt.Errorf("picturing %s: %w: %s", paper, err, out))
		}
	}
	return errors.Join(faults...)
}

// listPictures prints the files written, and fails when there are none.
func listPictures(dir string) error {
	pictures, err := filepath.Glob(filepath.Join(dir, "*.p[dn][fg]"))
	if err != nil {
		return err
	}
	if len(pictures) == 0 {
		return fmt.Errorf("no test called TestShots wrote a picture into %s", dir)
	}
	for _, picture := range pictures {
		toolchain.Say("%s", picture)
	}
	return nil
}
