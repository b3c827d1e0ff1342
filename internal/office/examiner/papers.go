// Package examiner has what an examiner of the elevator asks for: the registers, and the set of papers
// and files with its index and hashes.
package examiner

import (
	"bytes"
	"context"
	"fmt"
	"strings"

	"tenthpoint/internal/book"
	"tenthpoint/internal/digest"
	"tenthpoint/internal/i18n"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"

	"tenthpoint/internal/journal"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
)

// File is one file of a set. Name may have a folder in it, with a slash.
type File struct {
	Name  string
	Bytes []byte
}

// The files of a set that tell about the others.
const (
	IndexFile  = "index.txt"  // what is in the set, for people
	HashesFile = "SHA256SUMS" // the hash of every other file, in the form sha256sum checks
)

// Papers makes the set of papers an examiner asks for, over the days from one to another: every
// register as a paper and as comma-separated values, the sheet of every day, the rates that tickets
// were settled by, the state of the journal. The last two files are the index and the hashes of all
// the others. progress is called with each file's name and may be nil.
func Papers(ctx context.Context, d office.Desk, from, to quantity.Date, page report.Page, progress func(name string)) ([]File, error) {
	registers, err := Registers(ctx, d, from, to)
	if err != nil {
		return nil, err
	}
	s := &set{page: page.Wide(), progress: progress, say: i18n.ForPrograms(d.Profile().Language)}
	for _, r := range registers {
		s.paper("registers/"+r.Name, r.Paper)
		for _, t := range r.Paper.Tables() {
			s.csv("registers/"+r.Name, r.Paper, t)
		}
	}
	if err := addDays(ctx, d, s, from, to); err != nil {
		return nil, err
	}
	if err := addRates(ctx, d, s, from, to); err != nil {
		return nil, err
	}
	state, err := journalState(ctx, d)
	if err != nil {
		return nil, err
	}
	s.add("journal.txt", []byte(s.say.Text(state)+"\n"), message.New("The state of the journal: how many facts, and the hash that closes them."))
	if s.failed != nil {
		return nil, s.failed
	}
	head := []any{message.New("Papers of %v for examination", d.Profile().Business), message.New("from %s to %s, made on %s by %v", from, to, d.Today(), d.Signature())}
	if d.Profile().Demo {
		head = append(head, report.ExampleMark)
	}
	last, some, err := d.Reader().Head(ctx)
	if err != nil {
		return nil, err
	}
	if some {
		s.head = message.New("Head of the book: %v", d.HeadText(journal.HeadOf(last)))
	}
	return s.closed(message.List("\n", head...)), nil
}

// addDays adds the sheet of every day of the period on which a ticket was issued, and of every day
// closed.
func addDays(ctx context.Context, d office.Desk, s *set, from, to quantity.Date) error {
	for day := from; !day.After(to) && !day.After(d.Today()); day = day.AddDays(1) {
		if err := ctx.Err(); err != nil {
			return err
		}
		sheet, err := office.DaySheet(ctx, d, day)
		if err != nil {
			return err
		}
		if sheet.Closed == nil && len(sheet.Tickets) == 0 {
			continue
		}
		paper, err := office.DayPaper(ctx, d, day)
		if err != nil {
			return err
		}
		s.paper("days/"+day.String(), paper)
	}
	return nil
}

// addRates adds the text of every edition that a ticket of the period was settled under, as the
// book keeps it.
func addRates(ctx context.Context, d office.Desk, s *set, from, to quantity.Date) error {
	rows, err := d.Reader().Loads(ctx, book.LoadFilter{FromDay: from.String(), ToDay: to.String()})
	if err != nil {
		return err
	}
	seen := map[string]bool{}
	for _, r := range rows {
		if r.EditionHash == "" || seen[r.EditionHash] {
			continue
		}
		seen[r.EditionHash] = true
		id, text, err := d.Reader().Edition(ctx, r.EditionHash)
		if err != nil {
			return err
		}
		s.add(fmt.Sprintf("rates/%s-%.8s.toml", inFileName(id), inFileName(r.EditionHash)), []byte(text), message.New("Rates that tickets of the period were settled by."))
	}
	return nil
}

// inFileName makes a text of the book safe as part of a file name. Ids of rates are lower-case
// letters, digits and hyphens; a book from elsewhere may hold anything, and no path may leave the
// output folder.
func inFileName(text string) string {
	return strings.Map(func(r rune) rune {
		if r == '-' || r >= '0' && r <= '9' || r >= 'a' && r <= 'z' {
			return r
		}
		return '-'
	}, text)
}

func journalState(ctx context.Context, d office.Desk) (message.Text, error) {
	head, some, err := d.Reader().Head(ctx)
	if err != nil || !some {
		return message.New("The journal holds no fact."), err
	}
	return message.List("\n",
		message.New("The journal holds %d facts, chained by SHA-256. The last was written on %s by %v.", head.Seq, d.Local(head.At), head.Who),
		message.New("Its hash is %s.", head.Hash),
		message.New("\"tenth verify\" walks the chain, works every ticket out again and compares.")), nil
}

// set is files in the making.
type set struct {
	page     report.Page
	progress func(string)
	say      *message.Printer
	head     message.Text // of the book
	files    []File
	about    []string
	failed   error
}

func (s *set) add(name string, content []byte, about message.Text) {
	s.files = append(s.files, File{name, content})
	s.about = append(s.about, s.say.Text(about))
	if s.progress != nil {
		s.progress(name)
	}
}

func (s *set) paper(name string, d report.Document) {
	pdf, err := d.PDF(s.page)
	if err != nil && s.failed == nil {
		s.failed = err
	}
	s.add(name+".pdf", pdf, message.List("", message.List(", ", d.Title, d.About), "."))
}

func (s *set) csv(name string, d report.Document, t report.Table) {
	var out bytes.Buffer
	if err := d.CSV(&out, t); err != nil && s.failed == nil {
		s.failed = err
	}
	s.add(name+".csv", out.Bytes(), message.New("The same as comma-separated values."))
}

// closed adds the index and the hashes.
func (s *set) closed(head message.Text) []File {
	var index, hashes strings.Builder
	index.WriteString(s.say.Text(head) + "\n\n")
	if !s.head.IsZero() {
		index.WriteString(s.say.Text(s.head) + "\n\n")
	}
	for i, f := range s.files {
		fmt.Fprintf(&index, "%s\n    %s\n    %s\n", f.Name, s.about[i], s.say.Text(message.New("%d bytes, SHA-256 %s", len(f.Bytes), digest.Of(f.Bytes))))
		fmt.Fprintf(&hashes, "%s  %s\n", digest.Of(f.Bytes), f.Name)
	}
	index.WriteString("\n" + s.say.Text(message.New("%d files. %v lists their hashes and that of this index; sha256sum -c %v checks them all.", len(s.files), HashesFile, HashesFile)) + "\n")
	fmt.Fprintf(&hashes, "%s  %s\n", digest.Of(index.String()), IndexFile)
	return append(s.files, File{IndexFile, []byte(index.String())}, File{HashesFile, []byte(hashes.String())})
}
