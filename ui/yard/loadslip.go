package yard

import (
	"tenthpoint/internal/scaleticket"
	"tenthpoint/ui/session"
)

// Slip is the ticket of the load as it would print now, with what is missing
// named where it will stand.
func (f *LoadForm) Slip() []scaleticket.PaperLine {
	return scaleticket.Paper(scaleticket.Compose(session.TicketOf(f.session, f.Now.Load, f.Now.settlement, scaleticket.Draft, f.Now.sentences())))
}

// sentences are the reasons why the load cannot be settled.
func (s *standing) sentences() []string {
	out := make([]string, len(s.problems))
	for i, p := range s.problems {
		out[i] = session.Say(p.Sentence)
	}
	return out
}

// Working is every line of the settlement with its arithmetic, as the screen
// shows it in place of the slip. While the load cannot be settled it says why.
func (f *LoadForm) Working() []scaleticket.PaperLine {
	lines := []scaleticket.PaperLine{{Kind: scaleticket.PaperTitle, Left: session.Say("Working")}}
	s := f.Now.settlement
	if s == nil {
		lines = append(lines, scaleticket.PaperLine{Kind: scaleticket.PaperText, Left: session.Say("The load cannot be settled yet.")})
		for _, m := range f.Now.Load.Missing() {
			lines = append(lines, scaleticket.PaperLine{Kind: scaleticket.PaperMark, Left: session.Say(m.Sentence)})
		}
		for _, sentence := range f.Now.sentences() {
			lines = append(lines, scaleticket.PaperLine{Kind: scaleticket.PaperMark, Left: sentence})
		}
		return lines
	}
	return append(append(lines, session.WorkingLines(s, f.Now.Load.Details.Disposition)...), session.GradeLines(f.session, f.Now.Load)...)
}
