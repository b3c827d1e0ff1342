package entry

import "tenthpoint/internal/load"

// repeated are the fields that a load from one field usually shares with the one before it. Weights,
// results, the day and who answered for what are each load's own.
var repeated = []string{
	"grower", "shares", "commodity", "class", "crop", "truck", "plate", "trailer", "bin", "schedule",
	"terms", "whose", "owner-terms", "farm", "farm-number", "field", "grown-in", "variety", "lot", "apart",
}

// Repeated are the texts of the fields that a load usually shares with the one before it, as they
// are typed. The price is among them while it was agreed on the same day.
func Repeated(h House, last *load.Load) map[string]string {
	f, texts := New(h, Start{Book: last}), map[string]string{}
	ids := repeated
	if last.Details.Day == h.Today() {
		ids = append(ids[:len(ids):len(ids)], "price", "price-source")
	}
	for _, id := range ids {
		field, there := f.Field(id)
		if text := field.Shown(last); there && text != "" {
			texts[id] = text
		}
	}
	return texts
}
