// Package fonts holds the fonts of everything printed.
//
// A ticket has to print the same on every machine and in every year, so the
// letters are inside the program: DejaVu Sans Condensed, version 2.37, which
// has equally wide digits and the signs of a working (− × ÷ √ → ° …). Its
// licence lies beside it and asks to stay there.
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
