package rates

import (
	"bytes"
	"context"

	"tenthpoint/internal/checker/page"
	"tenthpoint/internal/office/posting"
	"tenthpoint/ui/model"
)

// growersPage is the name of the file that is made.
const growersPage = "check.html"

// SavePage writes the page by which a grower settles a ticket again: the posted rates with a
// calculator, the keys of the house, and nothing of a grower.
func (r *Rates) SavePage() {
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
