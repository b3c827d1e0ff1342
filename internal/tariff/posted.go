package tariff

import (
	"strconv"
	"strings"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates/rule"
	"tenthpoint/internal/tomlfile"
)

// Posted is a daily charge as it is posted: so much for so many days. A house that posts
// four cents for thirty days has posted no decimal for one.
type Posted struct {
	rule.Cell
	Days int // 1 where it is posted for one day
}

// said is the charge as posted: "$0.04/bu for 30 days".
func (p Posted) said() message.Text {
	if p.Days == 1 {
		return message.New("%s a day", p.Amount.Written())
	}
	return message.New("%s for %d days", p.Amount.Written(), p.Days)
}

// readPosted reads "0.001333 $/bu", or "0.04/30 $/bu" for what is posted for thirty days.
func readPosted(t *tomlfile.Table, key string, unit quantity.Unit) Posted {
	text := t.Text(key)
	if text == "" {
		return Posted{}
	}
	days, written := 1, text
	if over, divided := dividedBy(text); divided {
		days = over.days
		written = over.rest
	}
	a, err := quantity.ParseAmount(written)
	switch {
	case err != nil:
		t.AddProblem(key, message.New("%s: %v", t.Name(key), err), message.New("Write the charge of a day, such as \"0.0015 $/bu\", or as it is posted for several, \"0.04/30 $/bu\"."))
	case a.Unit() != unit:
		t.AddProblem(key, message.New("%s is in %s", t.Name(key), a.Unit()), message.New("It must be in %s.", message.Own(unit.String())))
	case days < 1 || days > 366:
		t.AddProblem(key, message.New("%s is posted for %d days", t.Name(key), days), message.New("Write the charge of 1 to 366 days."))
	default:
		return Posted{rule.Cell{Amount: a, Source: t.Source(key)}, days}
	}
	return Posted{}
}

type fraction struct {
	days int
	rest string // the figure and its unit without the divisor
}

// dividedBy takes the divisor out of "0.04/30 $/bu".
func dividedBy(text string) (fraction, bool) {
	figure, unit, _ := strings.Cut(text, " ")
	over, under, ok := strings.Cut(figure, "/")
	days, err := strconv.Atoi(under)
	if !ok || err != nil {
		return fraction{}, false
	}
	return fraction{days, over + " " + unit}, true
}
