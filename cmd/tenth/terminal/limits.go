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
			return nil, complaint(message.New("there is no limit %q in %s", shortened(limit), e.ID), didYouMean(limit, known, message.New("Limits are: %s", message.Names(", ", known))))
		}
	}
	return limits, nil
}

// NotFound adds the most similar names to an error, if there are any.
func NotFound(refused error, typed string, names []string) error {
	c, is := refused.(Complaint)
	if near := textsearch.Nearest(typed, names); is && len(near) > 0 {
		return complaint(c.what, meant(near, nil))
	}
	return refused
}

// Nearest returns the names most like a mistyped word.
func Nearest(typed string, names []string) []string { return textsearch.Nearest(typed, names) }

// didYouMean advises the words most like a text; where none is, something else.
func didYouMean(text string, known []string, otherwise message.Text) message.Text {
	if near := textsearch.Nearest(text, known); len(near) > 0 {
		return meant(near, nil)
	}
	return otherwise
}
