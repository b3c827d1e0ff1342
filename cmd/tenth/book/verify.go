// Package book holds the commands about the book as a whole: its check, a copy,
// lists taken over, the book of an invented elevator.
package book

import (
	"errors"
	"fmt"
	"strings"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/audit"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/scaleticket"
	"tenthpoint/internal/slipcode"
)

// Verify checks a book, or the code of one slip.
type Verify struct {
	terminal.BookFlags
	Code string `help:"Check a slip instead: its short code, or all that its QR code says." placeholder:"CODE"`
	// Head and Against are heads of the book noted outside it.
	Head    []string `help:"The head of the book as it was noted, number and hash; may be repeated." placeholder:"N:HASH"`
	Against string   `help:"A backup, the file beside one, or an examiner's folder, to hold the book against." placeholder:"PATH"`
	Since   string   `help:"Check only what was entered after a head that was noted; what came before is vouched for by it." placeholder:"N:HASH"`
	JSON    bool     `help:"Print for programs: every figure as text."`
}

func (Verify) Help() string {
	return `The whole book is walked: the file, the chain of facts, every load replayed and settled again under the rates kept with it, every list compared with the facts, every number accounted for. Each thing wrong is a line; the exit status is 0 only for a sound book.

    tenth verify
    tenth verify --book /mnt/stick/house.book
    tenth verify --head 4180:5f0c7a91d2e4
    tenth verify --since 4180:5f0c7a91d2e4
    tenth verify --against /mnt/stick/house-2026-10-01.book
    tenth verify --code 3fa9c01d22e4
    tenth verify --code "TENTHPOINT/1 1042 52300LB 18.4% 857.99BU 3FA9C01D22E4"

A book by itself cannot show that an older copy lies in its place, that its end was cut off, or that it was written again with new hashes. A head noted outside it does: each closed day sheet and the examiner's index print one, and each backup has one beside it.

A code is at the foot of the slip. The ticket's figures are printed as the book has them; when the QR code says other figures, that is an error.`
}

func (c Verify) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		if c.Code != "" {
			return c.slip(p)
		}
		terminal.CollectSeldom()
		found, err := c.check(p)
		if err != nil {
			return err
		}
		if err := c.heldAgainst(p, &found); err != nil {
			return err
		}
		return c.report(p, found)
	})
}

// check checks the whole book, or what came after a head.
func (c Verify) check(p *terminal.Session) (audit.Soundness, error) {
	if c.Since == "" {
		return audit.Verify(p, p.Desk, p.File, nil)
	}
	head, err := journal.ParseHead(c.Since)
	if err != nil {
		return audit.Soundness{}, err
	}
	return audit.VerifySince(p, p.Desk, p.File, head)
}

// soundnessJSON is the result of a check, for programs.
type soundnessJSON struct {
	Sound       bool           `json:"sound"`
	Facts       string         `json:"facts"`
	Loads       string         `json:"loads"`
	Tickets     string         `json:"tickets"`
	Settlements string         `json:"settlements"`
	Editions    string         `json:"editions"`
	Signatures  string         `json:"signatures,omitempty"`
	Problems    []message.Text `json:"problems"`
	Remarks     []message.Text `json:"remarks,omitempty"`
}

func (c Verify) report(p *terminal.Session, found audit.Soundness) error {
	sound := len(found.Problems) == 0
	if c.JSON {
		count := func(n int64) string { return fmt.Sprint(n) }
		signatures := ""
		if found.Signatures > 0 {
			signatures = count(found.Signatures)
		}
		err := p.PrintJSON(soundnessJSON{
			Sound: sound, Signatures: signatures, Facts: count(found.Facts), Loads: count(found.Loads), Tickets: count(found.Tickets),
			Settlements: count(found.Settlements), Editions: count(found.Editions), Problems: append([]message.Text{}, found.Problems...), Remarks: found.Remarks,
		})
		if err != nil {
			return err
		}
	} else {
		p.Say("%d facts, %d loads, %d tickets; %d settlements worked again under %d editions.", found.Facts, found.Loads, found.Tickets, found.Settlements, found.Editions)
		if found.Signatures > 0 {
			p.Say("%d signatures by certified computers.", found.Signatures)
		}
		for _, remark := range found.Remarks {
			p.Say("%s", remark)
		}
	}
	if sound {
		if !c.JSON {
			p.Say("All is sound.")
		}
		return nil
	}
	var all []error
	for _, problem := range found.Problems {
		all = append(all, terminal.Problem(problem))
	}
	last := terminal.Refusal("Keep the book as it is, and compare it with a backup", "the book is not sound: %d problems", len(found.Problems))
	return errors.Join(append(all, last)...)
}

// slip finds the ticket of a code and compares the slip's figures with it.
func (c Verify) slip(p *terminal.Session) error {
	code := c.Code
	said, err := scaleticket.ReadSquare(c.Code)
	whole := strings.Contains(strings.TrimSpace(c.Code), " ") || slipcode.Is(c.Code)
	if whole && err != nil {
		return err
	}
	if whole {
		code = said.Payload.Code
	}
	l, err := office.TicketByCode(p, p.Desk, code)
	if err != nil {
		return err
	}
	kept, err := p.SquareLike(l, said)
	if err != nil {
		return err
	}
	if err := c.tell(p, l, kept); err != nil || !whole {
		return err
	}
	var problems []error
	for _, d := range scaleticket.Unlike(said, kept) {
		problems = append(problems, terminal.Problem(message.New("%s: the paper has %s, the book %s.", d.What, message.Digits(d.Paper), message.Digits(d.Book))))
	}
	if len(problems) == 0 {
		return nil
	}
	last := terminal.Refusal("Do not rely on this slip; print it again with \"tenth reprint\"", "the slip is not what the book has as ticket %d", l.Number)
	return errors.Join(append(problems, last)...)
}

func (c Verify) tell(p *terminal.Session, l *load.Load, kept scaleticket.Square) error {
	if c.JSON {
		out, err := p.TicketJSON(l)
		if err != nil {
			return err
		}
		return p.PrintJSON(out)
	}
	p.Say("%s", terminal.Standing(l))
	p.Say("Net %s, moisture %s, dry %s. Code %s.", kept.Net, kept.Moisture, kept.Dry, kept.Payload.Code)
	p.Say("Grower %s, delivered on %s.", l.Details.Grower.Name, l.Details.Day)
	return nil
}
