package daysheet

import (
	"strconv"

	"tenthpoint/internal/message"
	"tenthpoint/internal/report"
)

// HourBars are the loads of the day by the hour, for the paper and the screen.
func (s *Sheet) HourBars() report.Bars {
	b := report.Bars{Title: message.New("Loads by hour"), Empty: message.New("No load was ticketed.")}
	return counted(b, s.Hours, func(h Hour) (string, int) { return h.Hour, h.In + h.Out })
}

// SpreadBars are the loads of the day by their moisture.
func (s *Sheet) SpreadBars() report.Bars {
	b := report.Bars{Title: message.New("Loads by moisture, whole percents"), Empty: message.New("No load was tested.")}
	return counted(b, s.Spread, func(m Spread) (string, int) { return m.Moisture, m.Loads })
}

// counted has a bar for each row, by its label and count.
func counted[R any](b report.Bars, rows []R, of func(R) (label string, n int)) report.Bars {
	most := 1
	for _, row := range rows {
		_, n := of(row)
		most = max(most, n)
	}
	for _, row := range rows {
		label, n := of(row)
		b.Labels, b.Heights, b.Values = append(b.Labels, message.Name(label)), append(b.Heights, n*1000/most), append(b.Values, message.Name(strconv.Itoa(n)))
	}
	return b
}
