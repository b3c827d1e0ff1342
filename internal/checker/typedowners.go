package checker

import (
	"fmt"
	"strconv"
	"strings"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/settle"
)

// The ids of the boxes that few slips need: a trailer weighed apart, and owners who share a load.
const (
	trailerGrossBox, trailerTareBox = "gross.2", "tare.2"
	partsBox, ownerBox              = "parts", "owner"
)

func seldomFields(s *sheet, e *rates.Edition) []field {
	weight := e.Units.Weight.String()
	return []field{
		{id: trailerGrossBox, label: s.Say("Gross of a trailer weighed apart"), unit: weight},
		{id: trailerTareBox, label: s.Say("Tare of a trailer weighed apart"), unit: weight},
		{id: partsBox, label: s.Say("Parts of the owners in the order of the slip, such as 2/3 1/3"), words: true},
		{id: ownerBox, label: s.Say("The owner the slip is for: 1 for the first")},
	}
}

// trailer is the second weighing of a load, where one was typed.
func (r *typist) trailer(source message.Text) []settle.Draft {
	if strings.TrimSpace(r.typed[trailerGrossBox]+r.typed[trailerTareBox]) == "" {
		return nil
	}
	gross, _ := r.figure(trailerGrossBox, r.s.Say("Gross of a trailer weighed apart"), r.e.Units.Weight, true)
	tare, _ := r.figure(trailerTareBox, r.s.Say("Tare of a trailer weighed apart"), r.e.Units.Weight, true)
	return []settle.Draft{{Gross: gross, Tare: tare, GrossSource: source, TareSource: source}}
}

// shares are the parts that were typed. Nobody's name is on them: owners have their numbers.
func (r *typist) shares() []settle.Share {
	text := strings.ReplaceAll(r.typed[partsBox], ";", " ")
	var out []settle.Share
	for _, one := range strings.Fields(text) {
		part, err := quantity.ParsePortion(r.s.Say("Share"), r.withPoint(one))
		if err != nil {
			r.problems = append(r.problems, sentence(r.s.printer.Error(err)))
			continue
		}
		out = append(out, settle.Share{Owner: fmt.Sprintf("#%d", len(out)+1), Parts: part.Parts, Of: part.Of})
	}
	return out
}

// withPoint is a figure with a decimal point, where the language has a comma.
func (r *typist) withPoint(text string) string {
	figure, err := quantity.WithPoint(r.s.Say("Share"), text, r.s.printer.Figures())
	if err != nil {
		return text // which then is no part
	}
	return figure
}

// owner is the number of the owner whose figures are wanted; zero for the whole load.
func (r *typist) owner(shares []settle.Share) int {
	text := strings.TrimSpace(r.typed[ownerBox])
	if len(shares) == 0 || text == "" {
		return 0
	}
	n, err := strconv.Atoi(text)
	if err != nil || n < 1 || n > len(shares) {
		r.problems = append(r.problems, r.s.Say("%v is none of the %d owners whose parts are typed.", message.Own(text), len(shares)))
		return 0
	}
	return n
}
