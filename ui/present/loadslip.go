package present

import (
	"tenthpoint/internal/entry"
	"tenthpoint/internal/load"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/slip"
)

// Slip is the ticket of the load as it would print now, with what is missing
// named where it will stand.
func (f *LoadForm) Slip() []slip.PaperLine {
	return slip.Paper(slip.Compose(f.frame.ticket(f.now.load, f.now.settlement, slip.Draft, f.now.sentences())))
}

// sentences are the reasons why the load cannot be settled.
func (s *standing) sentences() []string {
	out := make([]string, len(s.problems))
	for i, p := range s.problems {
		out[i] = translate(p.Sentence)
	}
	return out
}

// ticket gathers what a slip is made from.
func (f *Frame) ticket(l *load.Load, s *settle.Settlement, copyNo int64, problems []string) slip.Ticket {
	profile := f.Desk.Profile()
	if who := f.Desk.Who().Name; who != "" {
		profile.Weigher = who // who issues a ticket signs it
	}
	return slip.Ticket{
		House: profile, Load: l, Settlement: s, Edition: f.editionOf(l),
		Copy: copyNo, Problems: problems, Zone: f.Zone,
	}
}

// editionOf is the edition that a slip of a load names; nil while there is none.
// Grain that leaves is settled under none.
func (f *Frame) editionOf(l *load.Load) *rates.Edition {
	if l.Details.Direction == load.Outbound {
		return nil
	}
	e, err := entry.EditionOf(f.Desk.Profile(), f.Desk.Rates(), l.Details)
	if err != nil {
		return nil // the form says why, beside the commodity
	}
	return e
}

// Working is every line of the settlement with its arithmetic, as the screen
// shows it in place of the slip. While the load cannot be settled it says why.
func (f *LoadForm) Working() []slip.PaperLine {
	lines := []slip.PaperLine{{Kind: slip.PaperTitle, Left: Say("Working")}}
	s := f.now.settlement
	if s == nil {
		lines = append(lines, slip.PaperLine{Kind: slip.PaperText, Left: Say("The load cannot be settled yet.")})
		for _, m := range f.now.load.Missing() {
			lines = append(lines, slip.PaperLine{Kind: slip.PaperMark, Left: translate(m.Sentence)})
		}
		for _, sentence := range f.now.sentences() {
			lines = append(lines, slip.PaperLine{Kind: slip.PaperMark, Left: sentence})
		}
		return lines
	}
	return append(append(lines, workingLines(s, f.now.load.Details.Disposition)...), f.frame.gradeLines(f.now.load)...)
}
