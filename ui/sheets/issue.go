package sheets

import (
	"context"
	"fmt"

	"tenthpoint/internal/entry/settling"
	"tenthpoint/internal/office/money"
	"tenthpoint/internal/paysheet"
	acts "tenthpoint/internal/scalehouse/money"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// CanIssue reports whether the sheet can be issued.
func (s *Settle) CanIssue() bool { return s.Now.worked && s.manager() != "" }

// WhyNotIssue is what is missing.
func (s *Settle) WhyNotIssue() string { return s.Now.Remark.Text }

// Issue issues the sheet and prints it. The grower stays, for what is left.
func (s *Settle) Issue() {
	var made paysheet.Sheet
	err := s.session.As(s.manager(), func() (err error) {
		made, _, err = acts.Settle(context.Background(), s.session.Desk, s.Now.order)
		return err
	})
	if err != nil {
		s.session.Fail(err)
		return
	}
	s.texts = map[string]string{settling.Grower: made.Grower}
	clear(s.parts)
	s.session.Drafts().SaveSync(draftAt, nil)
	s.Reload()
	s.session.Changed()
	s.session.Notify(model.OK, s.session.Say("settlement sheet %d for %s: %s payable.", made.Number, made.Name, made.Figures["payable"]))
	printSheet(s.session, made.Number)
}

// printSheet prints a settlement sheet as it was issued.
func printSheet(f *session.Session, number int64) {
	sheet, worked, rules, err := money.SheetNumbered(context.Background(), f.Desk, number)
	if err != nil {
		f.Fail(err)
		return
	}
	doc := money.SheetPaper(sheet, worked, rules, f.GrainName(sheet.Commodity), f.Desk, f.Language.Printer())
	session.PrintDocument(f, doc, fmt.Sprintf("sheet-%d", number), f.Say("settlement sheet %d", number), false)
}
