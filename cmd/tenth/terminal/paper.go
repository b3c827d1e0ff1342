package terminal

import (
	"bytes"
	"fmt"

	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/internal/paper/roll"
	"tenthpoint/internal/printing"
	"tenthpoint/internal/scaleticket"
	"tenthpoint/internal/scaleticket/sheet"
)

// PaperFlags say where paper goes.
type PaperFlags struct {
	Out       string `help:"Write the slip into this folder, as PDF and as text." placeholder:"DIR" group:"paper"`
	Paper     string `help:"Size of the PDF." enum:"half-letter,a5" default:"half-letter" group:"paper"`
	Roll      bool   `help:"Set the text for a three-inch roll, and write its bytes for a receipt printer." group:"paper"`
	Columns   int    `help:"Letters to a line of the roll." enum:"42,48" default:"42" group:"paper"`
	CodePage  string `help:"Letters of the receipt printer." enum:"437,850,858,1252" default:"858" group:"paper"`
	EachOwner bool   `help:"A slip for each owner as well." group:"paper"`
}

// Slip is a ticket's document, settled again under the edition kept in the
// book. Owner is 0 for the whole load.
func (p *Session) Slip(l *load.Load, copyNo int64, owner int) (scaleticket.Document, error) {
	s, err := office.Resettle(p, p.Desk, l)
	if err != nil {
		return scaleticket.Document{}, err
	}
	code, err := office.Code(p, p.Desk, l)
	return scaleticket.Compose(scaleticket.Ticket{
		House: p.Profile(), Load: l, Settlement: s, Copy: copyNo, Code: code, Owner: owner, Zone: p.Place,
	}), err
}

// Paper writes a copy of a ticket into the folder, if one was named, and gives
// the files' names and the text of the slip.
func (p *Session) Paper(f PaperFlags, l *load.Load, copyNo int64) (files []string, text string, err error) {
	owners := 0
	if f.EachOwner {
		owners = len(l.Details.Shares)
	}
	for owner := range owners + 1 {
		doc, err := p.Slip(l, copyNo, owner)
		if err != nil {
			return files, text, err
		}
		text += sheet.Text(doc, f.columns())
		if f.Out == "" {
			continue
		}
		more, err := p.file(f, doc, PaperName(l.Number, copyNo, owner))
		files = append(files, more...)
		if err != nil {
			return files, text, fmt.Errorf("ticket %d is in the book, but its paper was not written: %w; print it with \"tenth reprint %d\"", l.Number, err, l.Number)
		}
	}
	return files, text, nil
}

func (f PaperFlags) columns() int {
	if f.Roll {
		return f.Columns
	}
	return sheet.PageColumns
}

// PaperSize is the size of paper by its name: "a5", "half-letter".
func PaperSize(name string) sheet.Size {
	if name == "a5" {
		return sheet.A5
	}
	return sheet.HalfLetter
}

// file writes one document as PDF and as text.
func (p *Session) file(f PaperFlags, doc scaleticket.Document, name string) ([]string, error) {
	var pdf bytes.Buffer
	if err := sheet.PDF(&pdf, doc, PaperSize(f.Paper), sheet.Options{}); err != nil {
		return nil, err
	}
	files, err := p.Files(f.Out, name, pdf.Bytes(), []byte(sheet.Text(doc, f.columns())))
	if err != nil || !f.Roll {
		return files, err
	}
	bytes, err := sheet.Roll(doc, roll.Settings{Columns: f.Columns, Page: f.CodePage})
	if err != nil {
		return files, err
	}
	receipt, err := printing.Folder{Path: f.Out}.Send(p, printing.Job{Name: name, MIME: printing.Roll, Bytes: bytes, Copies: 1})
	return append(files, receipt.Where), err
}

// Files writes a paper into a folder, never over an older file.
func (p *Session) Files(folder, name string, pdf, text []byte) ([]string, error) {
	var out []string
	for _, job := range []printing.Job{
		{Name: name, MIME: printing.PDF, Bytes: pdf, Copies: 1},
		{Name: name, MIME: printing.Text, Bytes: text, Copies: 1},
	} {
		if len(job.Bytes) == 0 {
			continue
		}
		receipt, err := printing.Folder{Path: folder}.Send(p, job)
		if err != nil {
			return out, err
		}
		out = append(out, receipt.Where)
	}
	return out, nil
}

// PaperName is the name of a slip's files: "ticket-1042-reprint-1-owner-2".
func PaperName(number, copyNo int64, owner int) string {
	name := fmt.Sprintf("ticket-%d", number)
	if copyNo > 0 {
		name += fmt.Sprintf("-reprint-%d", copyNo)
	}
	if owner > 0 {
		name += fmt.Sprintf("-owner-%d", owner)
	}
	return name
}
