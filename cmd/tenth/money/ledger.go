package money

import (
	"fmt"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/ledger"
	"tenthpoint/internal/office/money"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/ratefiles"
)

// Ledger is what sheets and payments come to in double-entry bookkeeping.
type Ledger struct {
	Journal ledgerJournal `cmd:"" default:"withargs" help:"Write the postings as a plain-text journal."`
	Paper   ledgerPaper   `cmd:"" help:"The postings as a paper or a workbook, with what each account comes to."`
	Check   ledgerCheck   `cmd:"" help:"Check a file of accounts."`
	Example ledgerExample `cmd:"" help:"Print an example file of accounts, to be filled in by the accountant."`
}

func (Ledger) Help() string {
	return `A settlement sheet is a purchase of grain; what is taken off it is earned, or owed to others; a payment clears what is owed to the grower. What was void is posted again with its signs turned, on the day it was void. Each transaction sums to zero. The file of accounts says which number each of these has in the accountant's books. No bank is told, and this is no accounting or tax advice.

    tenth ledger example > accounts.toml
    tenth ledger check accounts.toml
    tenth ledger --accounts accounts.toml --from 2026-10-01 --to 2026-10-31 --out october.journal
    tenth ledger paper --accounts accounts.toml --out papers --as xlsx`
}

type ledgerFlags struct {
	Accounts string `required:"" help:"The file of accounts." placeholder:"FILE"`
	From     string `help:"First day." placeholder:"YYYY-MM-DD"`
	To       string `help:"Last day." placeholder:"YYYY-MM-DD"`
}

// postings are the transactions of the span.
func (f ledgerFlags) postings(p *terminal.Session) (all []ledger.Transaction, from, to quantity.Date, err error) {
	if from, to, err = p.Span(f.From, f.To); err != nil {
		return nil, from, to, err
	}
	accounts, err := ratefiles.OpenAccounts(f.Accounts)
	if err != nil {
		return nil, from, to, err
	}
	all, err = money.Transactions(p, p.Desk, accounts, from, to)
	return all, from, to, err
}

type ledgerJournal struct {
	terminal.BookFlags
	ledgerFlags
	Out string `help:"The file to write; it must not be there yet. Without it, the journal is printed." placeholder:"FILE"`
}

func (ledgerJournal) Help() string {
	return `The format is that of plain-text accounting, as hledger documents it.

    tenth ledger --accounts accounts.toml --from 2026-10-01`
}

func (c ledgerJournal) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		all, _, _, err := c.postings(p)
		if err != nil {
			return err
		}
		text := ledger.Journal(all, p.Printer.Text)
		if c.Out == "" {
			fmt.Fprint(p.Stdout, text)
			return nil
		}
		if err := terminal.WriteNew(c.Out, []byte(text)); err != nil {
			return err
		}
		p.Say("%s", c.Out)
		return nil
	})
}

type ledgerPaper struct {
	terminal.BookFlags
	terminal.DocumentFlags
	ledgerFlags
}

func (ledgerPaper) Help() string {
	return `    tenth ledger paper --accounts accounts.toml --out papers --as xlsx,csv`
}

func (c ledgerPaper) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		all, from, to, err := c.postings(p)
		if err != nil {
			return err
		}
		return p.ShowDocument(c.DocumentFlags, money.LedgerPaper(all, p.Profile(), from, to, p.Today()), "postings", true)
	})
}

type ledgerCheck struct {
	File string `arg:"" help:"The file of accounts." placeholder:"FILE"`
}

func (ledgerCheck) Help() string { return `    tenth ledger check accounts.toml` }

func (c ledgerCheck) Run(t *terminal.Terminal) error {
	if _, err := ratefiles.OpenAccounts(c.File); err != nil {
		return err
	}
	t.Say("%s is in order.", c.File)
	return nil
}

type ledgerExample struct{}

func (ledgerExample) Help() string { return `    tenth ledger example > accounts.toml` }

func (ledgerExample) Run(t *terminal.Terminal) error {
	text, err := ratefiles.ExampleAccounts()
	if err != nil {
		return err
	}
	_, err = t.Stdout.Write(text)
	return err
}
