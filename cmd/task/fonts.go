package main

import (
	"fmt"
	"os"
	"path/filepath"

	"tenthpoint/internal/fonts/subset"
)

// The fonts of the papers are cut from the originals once and kept in the
// repository; a build and a print need only read them.
const (
	fontsFolder = "internal/fonts"
	fontsFrom   = "internal/fonts/original"
)

// fontsChore cuts the fonts of everything printed from the originals.
func fontsChore([]string) error {
	for file, style := range map[string]string{"regular.ttf": "Regular", "bold.ttf": "Bold"} {
		original, err := os.ReadFile(filepath.Join(fontsFrom, file))
		if err != nil {
			return err
		}
		cut, err := subset.Of(original, subset.Printed(), subset.PaperName(style))
		if err != nil {
			return fmt.Errorf("%s: %w", file, err)
		}
		if err := os.WriteFile(filepath.Join(fontsFolder, file), cut, 0o644); err != nil {
			return err
		}
		fmt.Printf("%s: %d bytes of %d\n", file, len(cut), len(original))
	}
	return nil
}
