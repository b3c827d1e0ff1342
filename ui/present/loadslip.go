package present

import (
	"tenthpoint/internal/slip"
)

// Slip is the ticket of the load as it would print now, with what is missing
// named where it will stand.
func (f *LoadForm) Slip() []slip.PaperLine {
	return slip.Paper(slip.Compose(TicketOf(f.frame, f.now.load, f.now.settlement, slip.Draft, f.now.sentences())))
}

// sentences are the reasons why the load cannot be settled.
func (s *standing) sentences() []string {
	out := make([]string, len(s.problems))
	for i, p := range s.problems {
		out[i] = translate(p.Sentence)
	}
	return out
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
	return append(append(lines, workingLines(s, f.now.load.Details.Disposition)...), GradeLines(f.frame, f.now.load)...)
}
