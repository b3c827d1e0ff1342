package session

import (
	"strconv"
	"strings"

	"tenthpoint/internal/paper/roll"
	"tenthpoint/internal/scaleticket"
	"tenthpoint/internal/scaleticket/sheet"
)

// What the station remembers of the paper that slips are printed on: nothing for
// pages, else the columns of a receipt printer, and its table of letters.
const (
	SlipColumns = "slips.columns"
	SlipLetters = "slips.letters"
)

// SlipRoll is the receipt printer that slips go to from this computer; false where
// they are printed on pages.
func SlipRoll(f *Session) (roll.Settings, bool) {
	if f.Station == nil {
		return roll.Settings{}, false
	}
	columns, err := strconv.Atoi(f.Station.Recall(SlipColumns))
	s := roll.Settings{Columns: columns, Page: OrElse(f.Station.Recall(SlipLetters), roll.DefaultPage)}
	return s, err == nil && s.Check() == nil
}

// slipOf is a slip with its copies, on pages or for the receipt printer.
func slipOf(f *Session, t scaleticket.Ticket) ([]byte, error) {
	settings, isRoll := SlipRoll(f)
	if !isRoll {
		return pdfOf(t)
	}
	var all []byte
	for _, one := range t.EachCopy() {
		slip, err := sheet.Roll(scaleticket.Compose(one), settings)
		if err != nil {
			return nil, err
		}
		all = append(all, slip...)
	}
	return all, nil
}

// Copies is the list of those for whom a ticket prints a copy, as it is typed:
// "driver, office".
func Copies(typed string) (list []string) {
	for _, name := range strings.Split(typed, ",") {
		if name = strings.TrimSpace(name); name != "" {
			list = append(list, name)
		}
	}
	return list
}
