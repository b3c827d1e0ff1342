package rates

import (
	"bytes"
	"context"

	"tenthpoint/internal/checker/page"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office/posting"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// growersPage is the name of the file that is made.
const growersPage = "check.html"

// savePage writes the page by which a grower settles a ticket again: the posted rates with a
// calculator, the keys of the house, and nothing of a grower.
func savePage(r *Rates) {
	var text bytes.Buffer
	r.session.Run(model.Job{
		Topic: "page", Title: r.session.Say("Making the page for growers"),
		Do: func(ctx context.Context, _ func(int, int)) error {
			house, err := posting.House(ctx, r.session.Desk)
			if err != nil {
				return err
			}
			return page.Write(&text, house)
		},
		Done: func(err error) {
			if err != nil {
				r.session.Fail(err)
				return
			}
			r.session.Save(growersPage, r.session.Say("the page for growers"), text.Bytes())
		},
	})
}

// printPosted prints the chosen edition as a paper to post.
func printPosted(r *Rates) {
	e := r.edition()
	if e == nil {
		return
	}
	notice, err := posting.Rates(context.Background(), r.session.Desk, e)
	if err != nil {
		r.session.Fail(err)
		return
	}
	session.PrintDocument(r.session, notice, "rates-"+e.ID, r.session.Say("the posted rates %v", message.Own(e.ID)), false)
}
