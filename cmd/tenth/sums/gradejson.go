package sums

import (
	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
)

// gradedJSON is a grading for programs.
type gradedJSON struct {
	Commodity        string      `json:"commodity"`
	Grade            string      `json:"grade,omitempty"`
	Complete         bool        `json:"complete"`
	HeldDownBy       []string    `json:"held_down_by"`
	Special          []string    `json:"special"`
	NotTested        []string    `json:"not_tested"`
	SpecialNotTested []string    `json:"special_not_tested"`
	Faults           []string    `json:"faults"`
	Cautions         []string    `json:"cautions"`
	Canada           []classJSON `json:"canada"`
	Advisory         string      `json:"advisory"`
}

type classJSON struct {
	Grain    string `json:"grain"`
	Class    string `json:"class"`
	Moisture string `json:"moisture"`
	Interval string `json:"interval"`
}

func gradingJSON(g office.Grading) gradedJSON {
	out := gradedJSON{Commodity: g.Commodity.ID, Canada: []classJSON{}, Advisory: grain.Advisory}
	us := grain.GradeResult{}
	if g.US != nil {
		us = *g.US
		out.Grade, out.Complete = us.Grade.String(), us.Complete
	}
	for from, to := range map[*[]string]*[]string{
		&us.Special: &out.Special, &us.NotTested: &out.NotTested, &us.SpecialNotTested: &out.SpecialNotTested,
	} {
		*to = append([]string{}, *from...)
	}
	out.HeldDownBy, out.Faults, out.Cautions = english(us.HeldDown), english(us.Faults), english(us.Cautions)
	for _, class := range g.Canada {
		out.Canada = append(out.Canada, classJSON{class.Grain, class.Name, class.Moisture.FixedString(1), class.Interval().String()})
	}
	return out
}

// english are texts for programs.
func english[S message.Sayable](all []S) []string {
	out := make([]string, len(all))
	for i, text := range all {
		out[i] = text.Message().String()
	}
	return out
}
