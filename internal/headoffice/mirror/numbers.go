package mirror

import (
	"regexp"
	"strconv"
	"strings"

	"tenthpoint/internal/bin"
	"tenthpoint/internal/dispute"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/load"
	"tenthpoint/internal/numbering"
	"tenthpoint/internal/office"
	"tenthpoint/internal/opening"
	"tenthpoint/internal/paysheet"
	"tenthpoint/internal/receipt"
)

// issuedSample is the number of a sample as the book gives it.
var issuedSample = regexp.MustCompile(`"number":"S([0-9]{1,18})"`)

// giveOut gives out the number that a fact carries, so that the book goes on behind it.
func (w *work) giveOut(f journal.Fact) error {
	series, number, err := numberOf(f)
	if err != nil || series == "" {
		return err
	}
	for w.numbers[series] < number {
		given, err := w.tx.NextNumber(series)
		if err != nil {
			return err
		}
		w.numbers[series] = given
	}
	return nil
}

// numberOf is the number of a series that a fact carries first; no series where it carries none.
func numberOf(f journal.Fact) (series string, number int64, err error) {
	switch f.Kind {
	case load.Opened{}.Kind():
		id, _ := office.LoadOfSubject(f.Subject)
		return numbering.Load, int64(office.LoadNumber(id)), nil
	case load.Issued{}.Kind():
		issued, err := journal.ReadBody[load.Issued](f.Body)
		return numbering.Ticket, issued.Number, err
	case load.Sampled{}.Kind():
		if found := issuedSample.FindSubmatch(f.Body); found != nil {
			number, err = strconv.ParseInt(string(found[1]), 10, 64)
			return numbering.Sample, number, err
		}
	case dispute.Raised{}.Kind():
		number, err = strconv.ParseInt(strings.TrimPrefix(f.Subject, office.DisputeSubject+"D"), 10, 64)
		return numbering.Dispute, number, err
	case bin.Movement{}.Kind():
		m, err := journal.ReadBody[bin.Movement](f.Body)
		return numbering.Movement, m.Number, err
	case paysheet.Sheet{}.Kind():
		s, err := journal.ReadBody[paysheet.Sheet](f.Body)
		return numbering.Sheet, s.Number, err
	case receipt.Receipt{}.Kind():
		r, err := journal.ReadBody[receipt.Receipt](f.Body)
		return numbering.Receipt, r.Number, err
	case opening.Opening{}.Kind():
		o, err := journal.ReadBody[opening.Opening](f.Body)
		return numbering.Opening, o.Last(), err
	case numbering.Passed{}.Kind():
		p, err := journal.ReadBody[numbering.Passed](f.Body)
		return p.Series, p.Last, err
	case paysheet.Payment{}.Kind():
		p, err := journal.ReadBody[paysheet.Payment](f.Body)
		return numbering.Payment, p.Number, err
	}
	return "", 0, nil
}
