package session

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"strconv"
	"strings"

	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/paper"
	"tenthpoint/internal/paper/pdf"
	"tenthpoint/internal/paper/roll"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/report"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scaleticket"
	"tenthpoint/internal/scaleticket/sheet"
	"tenthpoint/internal/settle"
	"tenthpoint/ui/model"
)

// PrintTicket prints a ticket: the original first, then reprints by number.
func PrintTicket(f *Session, number int64) {
	name, file, err := ticketPaper(f, number)
	if err != nil {
		f.Fail(err)
		return
	}
	if f.Printer == nil {
		f.Notify(model.Warn, f.Say("ticket %d is issued; no printer is set up. Choose one under Equipment.", number))
		return
	}
	where := ""
	f.Prints.running++
	f.Run(model.Job{
		Topic: "print " + name,
		Title: f.Say("Printing ticket %d", number),
		Do: func(ctx context.Context, _ func(int, int)) (err error) {
			where, err = f.Printer.Print(ctx, name, file)
			return err
		},
		Done: func(err error) {
			defer f.Prints.done()
			waits := errors.As(err, new(PaperWaits))
			if err == nil || waits { // paper there is, or there will be
				if _, failed := scalehouse.RecordPrint(context.Background(), f.Desk, number); failed != nil {
					f.Fail(failed)
					return
				}
			}
			if waits {
				f.Notify(model.Warn, f.Say("ticket %d is issued; it prints as soon as the printer does: %s", number, f.Sentence(err)))
				return
			}
			if err != nil {
				f.Notify(model.Warn, f.Say("ticket %d is issued and was not printed: %s Print it again from the tickets.", number, f.Sentence(err)))
				return
			}
			NoteHead(f)
			f.Notify(model.OK, f.Say("ticket %d is printed: %s", number, where))
		},
	})
}

// Prints are the tickets whose paper is under way.
type Prints struct {
	running int
	quit    func() // closes the window after the last of them
}

// done ends one print, and the program where it was to end after the last.
func (p *Prints) done() {
	p.running--
	if p.running == 0 && p.quit != nil {
		p.quit()
	}
}

// Quit closes the window once what is printing is recorded in the book; asked a second time, at
// once.
func (p *Prints) Quit(closeWindow func()) {
	if p.running == 0 || p.quit != nil {
		closeWindow()
		return
	}
	p.quit = closeWindow
}

// ticketPaper makes the next copy of a ticket. That it was printed is recorded once there is paper.
func ticketPaper(f *Session, number int64) (name string, file []byte, err error) {
	ctx := context.Background()
	l, err := office.Ticket(ctx, f.Desk, number)
	if err != nil {
		return "", nil, err
	}
	copyNo := l.Copies
	t, err := IssuedTicket(ctx, f, l, copyNo)
	if err != nil {
		return "", nil, err
	}
	file, err = slipOf(f, t)
	name = fmt.Sprintf("ticket-%d", number)
	if copyNo > 0 {
		name += fmt.Sprintf("-reprint-%d", copyNo)
	}
	return name, file, err
}

// IssuedTicket collects the input of an issued ticket's slip: the settlement is recalculated under
// the edition kept in the book.
func IssuedTicket(ctx context.Context, f *Session, l *load.Load, copyNo int64) (scaleticket.Ticket, error) {
	s, err := office.Resettle(ctx, f.Desk, l)
	if err != nil {
		return scaleticket.Ticket{}, err
	}
	t := TicketOf(f, l, s, copyNo, nil)
	if t.Titles, err = office.TitlesOf(ctx, f.Desk, l); err != nil {
		return t, err
	}
	t.Key, t.HouseKey = scalehouse.TicketKey(ctx, f.Desk)
	if t.Vouched, err = office.Vouched(ctx, f.Desk, l); err != nil {
		return t, err
	}
	t.Code, err = office.Code(ctx, f.Desk, l)
	return t, err
}

// TicketOf collects the input of a slip, with the edition looked up for the load.
func TicketOf(f *Session, l *load.Load, s *settle.Settlement, copyNo int64, problems []message.Text) scaleticket.Ticket {
	return TicketUnder(f, editionOf(f, l), l, s, copyNo, problems)
}

// TicketUnder collects the input of a slip of a load whose edition is known; nil while there is none.
func TicketUnder(f *Session, e *rates.Edition, l *load.Load, s *settle.Settlement, copyNo int64, problems []message.Text) scaleticket.Ticket {
	profile := f.Desk.Profile()
	if who := f.Desk.Who().Name; who != "" {
		profile.Weigher = who // who issues a ticket signs it
	}
	titles, _ := office.TitlesOf(context.Background(), f.Desk, l) // a law that cannot be read is told at the issue
	return scaleticket.Ticket{
		Titles: titles,
		House:  profile, Load: l, Settlement: s, Edition: e,
		Copy: copyNo, Problems: problems, Zone: f.Zone,
	}
}

// editionOf is the edition a load without a settlement will be settled under; nil while there is none,
// which its form and its issue tell with the reason. Grain that leaves is settled under none.
func editionOf(f *Session, l *load.Load) *rates.Edition {
	if l.Details.Direction == load.Outbound {
		return nil
	}
	e, err := office.EditionFor(f.Desk, l)
	if err != nil {
		return nil
	}
	return e
}

// PrintLastTicket prints the newest ticket again, as a reprint.
func PrintLastTicket(f *Session) {
	number, found, err := office.LastTicket(context.Background(), f.Desk)
	switch {
	case err != nil:
		f.Fail(err)
	case !found:
		f.Notify(model.Stop, f.Say("No ticket has been issued yet."))
	default:
		PrintTicket(f, number)
	}
}

// PrintLabel prints a label.
func PrintLabel(f *Session, label scaleticket.Label, name, what string) {
	var pdf bytes.Buffer
	if err := sheet.Label(&pdf, label); err != nil {
		f.Fail(err)
		return
	}
	PrintPaper(f, name, what, pdf.Bytes())
}

// PrintPaper prints a paper that is no ticket, and shows where it went.
func PrintPaper(f *Session, name, what string, file []byte) {
	if f.Printer == nil {
		f.Notify(model.Warn, f.Say("no printer is set up. Choose one under Equipment."))
		return
	}
	where := ""
	f.Run(model.Job{
		Topic: "print " + name, Title: f.Say("Printing %s", what),
		Do: func(ctx context.Context, _ func(int, int)) (err error) {
			where, err = f.Printer.Print(ctx, name, file)
			return err
		},
		Done: func(err error) {
			if errors.As(err, new(PaperWaits)) {
				f.Notify(model.Warn, f.Say("%s prints as soon as the printer does: %s", what, f.Sentence(err)))
				return
			}
			if err != nil {
				f.Notify(model.Warn, f.Say("%s was not printed: %s", what, f.Sentence(err)))
				return
			}
			f.Notify(model.OK, f.Say("%s is printed: %s", what, where))
		},
	})
}

// PrintDocument prints a paper of several parts; wide prints it in landscape.
func PrintDocument(f *Session, d report.Document, name, what string, wide bool) {
	page := report.PageFor(f.Desk.Profile().Rules)
	if wide {
		page = page.Wide()
	}
	file, err := d.PDF(page)
	if err != nil {
		f.Fail(err)
		return
	}
	PrintPaper(f, name, what, file)
}

// ExportDocument writes a paper as a workbook, and every table of it that has
// rows as comma-separated lines.
func ExportDocument(f *Session, d report.Document, name, what string) {
	for _, t := range d.Tables() {
		if len(t.Rows) == 0 {
			continue
		}
		var lines bytes.Buffer
		if err := d.CSV(&lines, t); err != nil {
			f.Fail(err)
			return
		}
		f.Save(fmt.Sprintf("%s %s.csv", name, t.Name), what, lines.Bytes())
	}
	var book bytes.Buffer
	if err := d.XLSX(&book); err != nil {
		f.Fail(err)
		return
	}
	f.Save(name+".xlsx", what, book.Bytes())
}

// SlipPages are the pages of a slip, as they print and as the window shows them.
func SlipPages(d scaleticket.Document) paper.Layout {
	return sheet.Layout(d, sheet.HalfLetter, sheet.Options{})
}

// pdfOf returns the PDF of a ticket: its pages once for each copy that the elevator prints.
func pdfOf(t scaleticket.Ticket) ([]byte, error) {
	var copies []paper.Layout
	for _, one := range t.EachCopy() {
		copies = append(copies, SlipPages(scaleticket.Compose(one)))
	}
	var file bytes.Buffer
	err := pdf.Write(&file, copies...)
	return file.Bytes(), err
}

// What the station remembers of the paper that slips are printed on: nothing for
// pages, else the columns of a receipt printer, and its table of letters.
const (
	SlipColumns = "slips.columns"
	SlipLetters = "slips.letters"
)

// SlipRoll is the receipt printer that slips go to from this computer; false where
// they are printed on pages.
func SlipRoll(f *Session) (roll.Settings, bool) {
	if f.Station == nil {
		return roll.Settings{}, false
	}
	columns, err := strconv.Atoi(f.Station.Recall(SlipColumns))
	s := roll.Settings{Columns: columns, Page: OrElse(f.Station.Recall(SlipLetters), roll.DefaultPage)}
	return s, err == nil && s.Check() == nil
}

// slipOf is a slip with its copies, on pages or for the receipt printer.
func slipOf(f *Session, t scaleticket.Ticket) ([]byte, error) {
	settings, isRoll := SlipRoll(f)
	if !isRoll {
		return pdfOf(t)
	}
	var all []byte
	for _, one := range t.EachCopy() {
		slip, err := sheet.Roll(scaleticket.Compose(one), settings)
		if err != nil {
			return nil, err
		}
		all = append(all, slip...)
	}
	return all, nil
}

// Copies is the list of those for whom a ticket prints a copy, as it is typed:
// "driver, office".
func Copies(typed string) (list []string) {
	for _, name := range strings.Split(typed, ",") {
		if name = strings.TrimSpace(name); name != "" {
			list = append(list, name)
		}
	}
	return list
}
