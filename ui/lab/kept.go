package lab

import (
	"strconv"
	"strings"

	"tenthpoint/internal/load"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// keptFields are the fields of the sample itself: its number, where the load was
// probed, and where the retained part is kept.
var keptFields = []string{"number", "probes", "place"}

// keptPart edits the sample's own data: number, probes, place.
type keptPart struct {
	sample load.Sample
	typed  texts
}

func (k keptPart) fields(in session.Language) []model.Field {
	return []model.Field{
		{ID: "number", Label: in.Say("Sample number"), Part: model.ClosePart, Chars: 12},
		{ID: "probes", Label: in.Say("Probed"), Part: model.ClosePart, Chars: 24},
		{ID: "place", Label: in.Say("Kept at"), Part: model.ClosePart, Chars: 24},
	}
}

// inBook returns the book's value of a field.
func (k keptPart) inBook(id string) string {
	return map[string]string{"number": k.sample.Number, "probes": k.sample.Probes, "place": k.sample.Kept}[id]
}

// text is the text in a field.
func (k keptPart) text(id string) string {
	if text, typed := k.typed[id]; typed {
		return text
	}
	return k.inBook(id)
}

// isTyped reports whether there is anything to record.
func (k keptPart) isTyped() bool {
	for _, id := range keptFields {
		if k.typed[id] != "" {
			return true
		}
	}
	return false
}

// probed returns the fact to write.
func (k keptPart) probed() scalehouse.Probed {
	return scalehouse.Probed{
		Number: strings.TrimSpace(k.text("number")), Probes: probesOf(k.text("probes")), Place: strings.TrimSpace(k.text("place")),
	}
}

// mostProbes is more than any truck is probed.
const mostProbes = 40

// probesOf reads where the load was probed: a number of probes, or their places
// with commas between.
func probesOf(text string) []moisture.Probe {
	text = strings.TrimSpace(text)
	if n, err := strconv.Atoi(text); err == nil && n > 0 && n <= mostProbes {
		return make([]moisture.Probe, n)
	}
	var out []moisture.Probe
	if head, places, counted := strings.Cut(text, ": "); counted && strings.TrimLeft(head, "0123456789") == "" {
		text = places
	}
	for _, place := range strings.Split(text, ",") {
		if place = strings.TrimSpace(place); place != "" {
			out = append(out, moisture.Probe{Place: place})
		}
	}
	return out
}
