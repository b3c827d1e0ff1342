package terminal

import (
	"slices"

	"tenthpoint/internal/message"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/textsearch"
)

// Accepted are limits to settle beyond, by the ids of the discounts they belong
// to. One that the edition does not have is refused: it would change nothing.
func Accepted(e *rates.Edition, limits []string) ([]string, error) {
	var known []string
	for _, d := range e.Discounts {
		known = append(known, d.ID)
	}
	for _, limit := range limits {
		if !slices.Contains(known, limit) {
			return nil, complaint(message.New("there is no limit %q in %s", shortened(limit), e.ID), didYouMean(limit, known, "Limits are"))
		}
	}
	return limits, nil
}

// NotFound is a refusal that advises the names most like what was typed, where any
// are.
func NotFound(refused error, typed string, names []string) error {
	c, is := refused.(Complaint)
	if near := textsearch.Nearest(typed, names); is && len(near) > 0 {
		return complaint(c.what, meant(near, nil))
	}
	return refused
}

// didYouMean advises the words most like a text, or all there are.
func didYouMean(text string, known []string, all string) message.Text {
	if near := textsearch.Nearest(text, known); len(near) > 0 {
		return meant(near, nil)
	}
	return message.New("%s: %s", message.Words(all), message.Names(", ", known))
}
