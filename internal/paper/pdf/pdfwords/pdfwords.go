// Package pdfwords reads the words back out of a paper made here, so that a test can compare them
// with the expected text.
//
// It supports just enough of the format for our own files: compressed page streams in which each
// text is in brackets before "Tj", in 16-bit characters. It is not a reader for other people's
// files.
package pdfwords

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"unicode/utf16"
)

// Run is a text with the place of its left end from the foot of the page, and the
// size of its letters, in thousandths of a point.
type Run struct {
	Text       string
	X, Y, Size int
}

// Pages are the texts of each page in the order they were inked.
func Pages(pdf []byte) ([][]string, error) {
	runs, err := Runs(pdf)
	pages := make([][]string, len(runs))
	for i, page := range runs {
		for _, r := range page {
			pages[i] = append(pages[i], r.Text)
		}
	}
	return pages, err
}

// Runs are the texts of each page with their places.
func Runs(pdf []byte) ([][]Run, error) {
	var pages [][]Run
	for rest := pdf; ; {
		_, after, found := bytes.Cut(rest, []byte("stream\n"))
		if !found {
			return pages, nil
		}
		packed, next, found := bytes.Cut(after, []byte("\nendstream"))
		if !found {
			return nil, fmt.Errorf("a stream does not end")
		}
		rest = next
		page, err := unpack(packed)
		if err != nil {
			return nil, err
		}
		if isPage(page) {
			pages = append(pages, runs(page))
		}
	}
}

func unpack(packed []byte) ([]byte, error) {
	r, err := zlib.NewReader(bytes.NewReader(packed))
	if err != nil {
		return nil, nil // not compressed: no page of ours
	}
	return io.ReadAll(r)
}

func isPage(stream []byte) bool { return bytes.Contains(stream, []byte(" Tj ET")) }

// runs reads "BT /F1 7.9 Tf 27 500 Td (text) Tj ET".
func runs(page []byte) []Run {
	var out []Run
	for {
		before, after, found := bytes.Cut(page, []byte(" Td ("))
		if !found {
			return out
		}
		r := Run{}
		if at := bytes.LastIndex(before, []byte("BT ")); at >= 0 {
			words := strings.Fields(string(before[at:])) // BT /F1 7.9 Tf 27 500
			if len(words) < 6 {
				words = slices.Repeat([]string{"0"}, 6)
			}
			r.Size, r.X, r.Y = thousandths(words[2]), thousandths(words[4]), thousandths(words[5])
		}
		raw, length := bracketed(after)
		r.Text = decode(raw)
		out = append(out, r)
		page = after[length:]
	}
}

// thousandths reads a number with at most three decimals.
func thousandths(text string) int {
	whole, rest, _ := strings.Cut(text, ".")
	number, err := strconv.Atoi(whole + (rest + "000")[:3])
	if err != nil {
		panic("pdfwords: " + err.Error())
	}
	return number
}

// bracketed takes the bytes up to the closing bracket, without the escapes.
func bracketed(b []byte) (raw []byte, length int) {
	for i := 0; i < len(b); i++ {
		switch b[i] {
		case '\\':
			i++
			if b[i] == 'r' {
				raw = append(raw, '\r')
			} else {
				raw = append(raw, b[i])
			}
		case ')':
			return raw, i
		default:
			raw = append(raw, b[i])
		}
	}
	return raw, len(b)
}

func decode(raw []byte) string {
	units := make([]uint16, 0, len(raw)/2)
	for i := 0; i+1 < len(raw); i += 2 {
		units = append(units, uint16(raw[i])<<8|uint16(raw[i+1]))
	}
	return string(utf16.Decode(units))
}
