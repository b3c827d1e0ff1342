// Package pdf writes papers as PDF files.
//
// The fonts are the same in every file, so they are compressed once per process and copied; only
// the pages are compressed per file. The same papers give the same bytes: nothing here reads the
// clock, and the date of a file is that of its first paper.
//
// The format is PDF 1.4 (ISO 32000-1 describes it): letters are two-byte characters
// of the basic plane, each page is one stream of its own.
package pdf

import (
	"fmt"
	"io"

	"tenthpoint/internal/message"
	"tenthpoint/internal/paper"
)

// Write writes papers one after the other into one PDF file.
func Write(w io.Writer, papers ...paper.Layout) error {
	f := Begin(w)
	for _, p := range papers {
		f.Add(p)
	}
	return f.Close()
}

// File is a PDF being written. Its pages are written as they are added, so a file
// of many papers takes no more memory than one of few.
type File struct {
	out     io.Writer
	written int
	failed  error
	places  []int // where each object begins; 0 while it is not written
	pages   []int // the objects of the pages
	first   paper.Layout
	page    stream
}

// The objects that every file begins with.
const (
	catalogObject = iota + 1
	pagesObject
	infoObject
	letterObject // the object of the map from characters to glyphs
	regularObject
	boldObject = regularObject + fontObjects
	lastFixed  = boldObject + fontObjects - 1
)

// Begin starts a file. Close reports write errors.
func Begin(w io.Writer) *File {
	f := &File{out: w, places: make([]int, lastFixed+1)}
	f.print("%%PDF-1.4\n%%\xe2\xe3\xcf\xd3\n")
	return f
}

// Add writes the pages of a paper.
func (f *File) Add(p paper.Layout) {
	if len(f.pages) == 0 {
		f.first = p
		f.fonts()
	}
	for i := range p.Pages {
		f.addPage(p, &p.Pages[i])
	}
}

func (f *File) addPage(p paper.Layout, m *paper.Marks) {
	page, content := f.reserve(), f.reserve()
	f.pages = append(f.pages, page)
	f.object(page, "<</Type /Page /Parent %d 0 R /MediaBox [0 0 %s %s] /Resources <</Font <</F1 %d 0 R /F2 %d 0 R>>>> /Contents %d 0 R>>",
		pagesObject, twoPlaces(p.Width), twoPlaces(p.Height), regularObject, boldObject, content)
	f.page.draw(m, p.Width, p.Height)
	f.packed(content, deflated(f.page.bytes))
}

// Close ends the file, and returns the first error since Begin.
func (f *File) Close() error {
	if len(f.pages) == 0 {
		return message.Errorf("a PDF without a page cannot be made")
	}
	f.tree()
	f.info()
	f.object(catalogObject, "<</Type /Catalog /Pages %d 0 R>>", pagesObject)
	table := f.written
	f.print("xref\n0 %d\n0000000000 65535 f \n", len(f.places))
	for _, at := range f.places[1:] {
		f.print("%010d 00000 n \n", at)
	}
	f.print("trailer\n<</Size %d /Root %d 0 R /Info %d 0 R>>\nstartxref\n%d\n%%%%EOF\n", len(f.places), catalogObject, infoObject, table)
	return f.failed
}

// tree lists the pages.
func (f *File) tree() {
	f.begin(pagesObject)
	f.print("<</Type /Pages /Count %d /Kids [", len(f.pages))
	for _, page := range f.pages {
		f.print("%d 0 R ", page)
	}
	f.print("]>>\nendobj\n")
}

func (f *File) info() {
	date := f.first.Made.Format("20060102150405")
	f.object(infoObject, "<</Title <%s> /Producer <%s> /CreationDate (D:%s) /ModDate (D:%s)>>",
		hexText(f.first.Title), hexText("Tenthpoint"), date, date)
}

// reserve numbers an object that is written later.
func (f *File) reserve() int {
	f.places = append(f.places, 0)
	return len(f.places) - 1
}

func (f *File) begin(number int) {
	f.places[number] = f.written
	f.print("%d 0 obj\n", number)
}

func (f *File) object(number int, format string, values ...any) {
	f.begin(number)
	f.print(format, values...)
	f.print("\nendobj\n")
}

// packed writes a stream that is packed already.
func (f *File) packed(number int, bytes []byte) {
	f.begin(number)
	f.print("<</Filter /FlateDecode /Length %d>>\nstream\n", len(bytes))
	f.write(bytes)
	f.print("\nendstream\nendobj\n")
}

func (f *File) print(format string, values ...any) {
	if f.failed == nil {
		n, err := fmt.Fprintf(f.out, format, values...)
		f.written, f.failed = f.written+n, err
	}
}

func (f *File) write(bytes []byte) {
	if f.failed == nil {
		n, err := f.out.Write(bytes)
		f.written, f.failed = f.written+n, err
	}
}
