package growers

import (
	"context"

	"tenthpoint/internal/daysheet"
	"tenthpoint/internal/office"
	"tenthpoint/internal/office/growing"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/season"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// seasonSum is the account of one grower since the season began. It is added up away
// from the window.
type seasonSum struct {
	session *session.Session
	account daysheet.Account
	farms   []growing.Farm
	of      string // the grower it is of; empty while it is being added up
	err     error
}

// forget invalidates the cached account.
func (s *seasonSum) forget() { s.of = "" }

// open calculates the account of a grower, unless it is the cached one.
func (s *seasonSum) open(code string) {
	if s.of == code {
		return
	}
	s.of, s.err = "", nil
	var account daysheet.Account
	var farms []growing.Farm
	s.session.Run(model.Job{
		Topic: "account",
		Do: func(ctx context.Context, _ func(int, int)) (err error) {
			if account, err = office.Account(ctx, s.session.Desk, code, season.Began(s.session.Desk.Today()), quantity.Date{}); err != nil {
				return err
			}
			farms, err = growing.Production(ctx, s.session.Desk, code, season.Began(s.session.Desk.Today()), quantity.Date{})
			return err
		},
		Done: func(err error) { s.account, s.farms, s.of, s.err = account, farms, code, err },
	})
}

// card is contracts and deliveries of a grower, once they have been added up.
func (s *seasonSum) card(c *session.Card, code string) {
	switch {
	case s.err != nil:
		c.Part(s.session.Say("DELIVERED"))
		c.Add(model.CardMark, s.session.Sentence(s.err), "")
		return
	case s.of != code:
		c.Part(s.session.Say("DELIVERED"))
		c.Add(model.CardText, s.session.Say("being added up …"), "")
		return
	}
	cardContracts(c, s.account.Contracts)
	c.Part(s.session.Say("DELIVERED SINCE %s", s.session.Date(s.account.From)))
	if len(s.account.Parts) == 0 {
		c.Add(model.CardText, s.session.Say("Nothing yet this season."), "")
	}
	for _, part := range s.account.Parts {
		cardDelivered(c, part)
	}
	cardProduction(c, s.farms)
}
