package terminal

import (
	"bytes"
	"fmt"

	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/paper"
	"tenthpoint/internal/paper/pdf"
	"tenthpoint/internal/paper/roll"
	"tenthpoint/internal/printing"
	"tenthpoint/internal/scalehouse"
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

// Slip is a ticket's document. Owner is 0 for the whole load.
func (p *Session) Slip(l *load.Load, copyNo int64, owner int) (scaleticket.Document, error) {
	t, err := p.ticket(l, copyNo, owner)
	if err != nil {
		return scaleticket.Document{}, err
	}
	return scaleticket.Compose(t), nil
}

// SquareLike is the square of a ticket on the copy that a scanned one is from.
func (p *Session) SquareLike(l *load.Load, scanned scaleticket.Square) (scaleticket.Square, error) {
	t, err := p.ticket(l, 0, 0)
	if err != nil {
		return scaleticket.Square{}, err
	}
	return t.SquareLike(scanned), nil
}

// ticket returns the content of a slip, settled again under the edition kept in the book.
func (p *Session) ticket(l *load.Load, copyNo int64, owner int) (scaleticket.Ticket, error) {
	s, err := office.Resettle(p, p.Desk, l)
	if err != nil {
		return scaleticket.Ticket{}, err
	}
	titles, err := office.TitlesOf(p, p.Desk, l)
	if err != nil {
		return scaleticket.Ticket{}, err
	}
	vouched, err := office.Vouched(p, p.Desk, l)
	if err != nil {
		return scaleticket.Ticket{}, err
	}
	code, err := office.Code(p, p.Desk, l)
	key, house := scalehouse.TicketKey(p, p.Desk)
	return scaleticket.Ticket{
		Titles: titles, Vouched: vouched, Key: key, HouseKey: house,
		House: p.Profile(), Load: l, Settlement: s, Copy: copyNo, Code: code, Owner: owner, Zone: p.Place,
	}, err
}

// copies returns the documents of a ticket, one for each copy that the elevator prints.
func (p *Session) copies(l *load.Load, copyNo int64, owner int) ([]scaleticket.Document, error) {
	t, err := p.ticket(l, copyNo, owner)
	if err != nil {
		return nil, err
	}
	var docs []scaleticket.Document
	for _, one := range t.EachCopy() {
		docs = append(docs, scaleticket.Compose(one))
	}
	return docs, nil
}

// Paper writes a copy of a ticket into the folder, if one was named, and returns the files' names
// and the text of the slip.
func (p *Session) Paper(f PaperFlags, l *load.Load, copyNo int64) (files []string, text string, err error) {
	owners := 0
	if f.EachOwner {
		owners = len(l.Details.Shares)
	}
	for owner := range owners + 1 {
		docs, err := p.copies(l, copyNo, owner)
		if err != nil {
			return files, text, err
		}
		text += f.text(docs)
		if f.Out == "" {
			continue
		}
		more, err := p.file(f, docs, PaperName(l.Number, copyNo, owner))
		files = append(files, more...)
		if err != nil {
			return files, text, message.Storage.Errorf("ticket %d is in the book, but its paper was not written: %w; print it with \"tenth reprint %d\"", l.Number, err, l.Number)
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

// text is every copy of a slip, one after the other.
func (f PaperFlags) text(docs []scaleticket.Document) (text string) {
	for _, doc := range docs {
		text += sheet.Text(doc, f.columns())
	}
	return text
}

// file writes the copies of a slip as PDF and as text, and for a receipt printer.
func (p *Session) file(f PaperFlags, docs []scaleticket.Document, name string) ([]string, error) {
	var pages []paper.Layout
	for _, doc := range docs {
		pages = append(pages, sheet.Layout(doc, PaperSize(f.Paper), sheet.Options{}))
	}
	var file bytes.Buffer
	if err := pdf.Write(&file, pages...); err != nil {
		return nil, err
	}
	files, err := p.Files(f.Out, name, file.Bytes(), []byte(f.text(docs)))
	if err != nil || !f.Roll {
		return files, err
	}
	return p.rollFile(f, docs, name, files)
}

// rollFile adds the bytes of a receipt printer to the files written.
func (p *Session) rollFile(f PaperFlags, docs []scaleticket.Document, name string, files []string) ([]string, error) {
	var all []byte
	for _, doc := range docs {
		one, err := sheet.Roll(doc, roll.Settings{Columns: f.Columns, Page: f.CodePage})
		if err != nil {
			return files, err
		}
		all = append(all, one...)
	}
	receipt, err := printing.Folder{Path: f.Out}.Send(p, printing.Job{Name: name, MIME: printing.Roll, Bytes: all, Copies: 1})
	return append(files, receipt.Where), err
}

// Files writes a paper into a folder, never over an older file.
func (p *Session) Files(folder, name string, file, text []byte) ([]string, error) {
	var out []string
	for _, job := range []printing.Job{
		{Name: name, MIME: printing.PDF, Bytes: file, Copies: 1},
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

// WriteLabel writes a label into a folder as PDF and names the file.
func (p *Session) WriteLabel(label scaleticket.Label, folder, name string) error {
	var pdf bytes.Buffer
	if err := sheet.Label(&pdf, label); err != nil {
		return err
	}
	files, err := p.Files(folder, name, pdf.Bytes(), nil)
	for _, file := range files {
		p.Say("Written: %s", file)
	}
	return err
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
