package ask

import (
	"context"
	"strings"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/internal/office/terms"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// Prices asks for the prices of today, one for each grain taken here.
func Prices(f *session.Session) {
	posted, err := postedToday(f)
	if err != nil {
		f.Fail(err)
		return
	}
	var fields []model.AskField
	for _, g := range f.Desk.Profile().Grains {
		field := model.AskField{ID: g.Commodity, Label: f.GrainName(g.Commodity), Unit: "$", Chars: 10, Figures: true, Hint: f.Say("not posted today")}
		if p, there := posted[g.Commodity]; there {
			field.Value = p.Price.Fixed(2)
			field.Hint = f.Say("posted %s by %s", f.Desk.Local(p.At), p.Who)
		}
		fields = append(fields, field)
	}
	f.Put(model.Ask{
		Draft: "prices", Title: f.Say("Prices posted for %s", f.Date(f.Desk.Today())), Fields: fields, Yes: f.Say("Post"),
		Text: f.Say("All desks have them. A price typed on a load is compared with its posted one, and the ticket remembers it; \"posted\" takes it."),
		Check: func(values map[string]string) map[string]string {
			_, faults := readPrices(f, posted, values)
			return faults
		},
		Then: func(values map[string]string) {
			prices, _ := readPrices(f, posted, values)
			post(f, prices)
		},
	})
}

// postedToday are the prices in force today for grain delivered now, by grain.
func postedToday(f *session.Session) (map[string]load.Posted, error) {
	all, err := terms.PostedOn(f.Desk.Reader().Facts(context.Background(), terms.Posted()), f.Desk.Today())
	out := map[string]load.Posted{}
	for _, one := range all {
		if one.Place == "" && one.Delivery == "" { // as tickets take it
			out[one.Commodity] = one
		}
	}
	return out, err
}

// readPrices are the prices of the sheet that are not posted yet; the faults are sentences by field.
func readPrices(f *session.Session, posted map[string]load.Posted, values map[string]string) ([]elevator.PostedPrice, map[string]string) {
	house, faults := office.NewEntering(context.Background(), f.Desk), map[string]string{}
	var out []elevator.PostedPrice
	for _, g := range f.Desk.Profile().Grains {
		text := strings.TrimSpace(values[g.Commodity])
		if text == "" {
			continue
		}
		one, err := entry.ReadPosted(house, g.Commodity, text, "")
		if err != nil {
			faults[g.Commodity] = f.Sentence(err)
			continue
		}
		if before, there := posted[g.Commodity]; !there || !before.Price.Equal(one.Price) {
			out = append(out, one)
		}
	}
	return out, faults
}

// post posts prices together.
func post(f *session.Session, prices []elevator.PostedPrice) {
	ctx := context.Background()
	err := f.Desk.Batch(ctx, func(w *scalehouse.Batch) error {
		for _, one := range prices {
			if err := scalehouse.PostPrice(ctx, w, one); err != nil {
				return err
			}
		}
		return nil
	})
	if err != nil {
		f.Fail(err)
		return
	}
	f.Changed()
	f.Notify(model.OK, f.Say("%d prices are posted for today.", len(prices)))
}
