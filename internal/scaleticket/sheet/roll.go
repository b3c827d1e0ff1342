package sheet

import (
	"tenthpoint/internal/paper/roll"
	"tenthpoint/internal/scaleticket"
)

// Roll writes a ticket for a receipt printer: the lines of [Text], with the code
// drawn by the printer itself under the code in letters, before the working.
func Roll(d scaleticket.Document, s roll.Settings) ([]byte, error) {
	p, err := roll.Begin(s)
	if err != nil {
		return nil, err
	}
	ticket, working := texts(d, s.Columns)
	p.Text(ticket)
	if square, ok := scaleticket.QR(d); ok {
		p.Code(square.Text)
	}
	p.Text(working)
	return p.End(), nil
}
