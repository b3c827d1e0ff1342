package receipts

import (
	"fmt"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/confirmation"
	"tenthpoint/internal/office/confirming"
	acts "tenthpoint/internal/scalehouse/confirming"
)

// Confirm are the letters by which depositors confirm their balances.
type Confirm struct {
	List    confirmList    `cmd:"" default:"withargs" help:"A sample as a paper: who was written to, what came back, what did not."`
	Draw    confirmDraw    `cmd:"" help:"Draw a sample of depositors with their balances of today. A manager's act."`
	Letters confirmLetters `cmd:"" help:"The letters as papers."`
	Answer  confirmAnswer  `cmd:"" help:"Write down what came back to a letter."`
}

func (Confirm) Help() string {
	return `The depositors are put in the order of the SHA-256 of a seed and their code, and the first of them are written to: anybody can draw the same sample again. Without a seed it is the end of the chain of facts.

    tenth confirm draw --size 10 --who "Mae Orton"
    tenth confirm draw --size 10 --seed 4711 --preview
    tenth confirm letters --out letters
    tenth confirm answer 3 agrees
    tenth confirm answer 4 differs --words "1,200 bu, not 1,100 bu"
    tenth confirm list --out papers`
}

// sampleFlag is the sample that a command is about.
type sampleFlag struct {
	Sample int64 `help:"Number of the sample. Without it, the last one." placeholder:"NUMBER"`
}

type confirmList struct {
	terminal.BookFlags
	terminal.DocumentFlags
	sampleFlag
}

func (confirmList) Help() string { return `    tenth confirm list --sample 1 --out papers` }

func (c confirmList) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		r, err := confirming.Numbered(p, p.Desk, c.Sample)
		if err != nil {
			return err
		}
		return p.ShowDocument(c.DocumentFlags, confirming.List(r, p.Profile()), fmt.Sprintf("confirmations-%d", r.Number), false)
	})
}

type confirmDraw struct {
	terminal.BookFlags
	terminal.WhoFlags
	Size    int    `required:"" help:"How many depositors are written to." placeholder:"NUMBER"`
	Seed    string `help:"The seed, such as one an examiner gives." placeholder:"WORDS"`
	Preview bool   `help:"Say who would be drawn, and write nothing."`
}

func (confirmDraw) Help() string {
	return `    tenth confirm draw --size 10 --seed 4711 --who "Mae Orton"`
}

func (c confirmDraw) Run(t *terminal.Terminal) error {
	how := terminal.ReadWrite
	if c.Preview {
		how = terminal.ReadOnly
	}
	return c.WithBook(t, how, c.Who, func(p *terminal.Session) error {
		r, err := confirming.Draft(p, p.Desk, c.Size, c.Seed)
		if err == nil && !c.Preview {
			r, err = acts.Enter(p, p.Desk, r)
		}
		if err != nil {
			return err
		}
		for _, l := range r.Letters {
			p.Say("Letter %d: %v %v", l.Number, l.Grower, l.Name)
		}
		if c.Preview {
			p.Say("%d of %d depositors with a balance, by the seed %v. Nothing was written.", len(r.Letters), r.Of, r.Seed)
			return nil
		}
		p.Say("Sample %d: %d of %d depositors with a balance, by the seed %v.", r.Number, len(r.Letters), r.Of, r.Seed)
		return nil
	})
}

type confirmLetters struct {
	terminal.BookFlags
	terminal.DocumentFlags
	sampleFlag
	Letter int    `help:"Only this letter." placeholder:"NUMBER"`
	In     string `help:"Language of the letters. Without it, that of the house." enum:"${languages}," default:"" placeholder:"LANGUAGE"`
}

func (confirmLetters) Help() string {
	return `    tenth confirm letters --out letters
    tenth confirm letters --letter 3 --in es --out letters`
}

func (c confirmLetters) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		r, err := confirming.Numbered(p, p.Desk, c.Sample)
		if err != nil {
			return err
		}
		for _, l := range r.Letters {
			if c.Letter != 0 && l.Number != c.Letter {
				continue
			}
			name := fmt.Sprintf("letter-%d-%d", r.Number, l.Number)
			if err := p.ShowDocument(c.DocumentFlags, confirming.Letter(r, l, p.Profile(), c.In), name, false); err != nil {
				return err
			}
		}
		return nil
	})
}

type confirmAnswer struct {
	terminal.BookFlags
	terminal.WhoFlags
	sampleFlag
	Letter int    `arg:"" help:"Number of the letter." placeholder:"LETTER"`
	How    string `arg:"" help:"agrees, differs or returned." enum:"agrees,differs,returned"`
	Words  string `help:"What the answer says." placeholder:"WORDS"`
}

func (confirmAnswer) Help() string {
	return `A later answer stands in place of an earlier one; both stay in the book.

    tenth confirm answer 4 differs --words "1,200 bu, not 1,100 bu"`
}

func (c confirmAnswer) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		r, err := acts.Note(p, p.Desk, c.Sample, c.Letter, confirmation.How(c.How), c.Words)
		if err != nil {
			return err
		}
		p.Say("Letter %d of sample %d is answered; %d of %d letters are not.", c.Letter, r.Number, len(r.Unanswered()), len(r.Letters))
		return nil
	})
}
