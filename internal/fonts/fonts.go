// Package fonts holds the fonts of everything printed, and of the papers shown in
// the window.
//
// A ticket has to print the same on every machine and in every year, so the fonts are embedded.
// They are subsets of DejaVu Sans Condensed, version 2.37 (folder original), which has equally wide
// digits and the signs of a working (− × ÷ √ → ° …), by `go run ./cmd/task fonts`: only the letters
// that are printed, without hinting, and renamed as the licence requires. The licence must stay
// beside them.
package fonts

import _ "embed"

// Regular is the plain face, a TrueType file. It must not be changed.
//
//go:embed regular.ttf
var Regular []byte

// Bold is the strong face, a TrueType file. It must not be changed.
//
//go:embed bold.ttf
var Bold []byte
