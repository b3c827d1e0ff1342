package office_test

import (
	"strings"
	"testing"

	"tenthpoint/internal/dispute"
	"tenthpoint/internal/explanation"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/office"
	"tenthpoint/internal/paper/pdf/pdfwords"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/report"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/disputes"
	"tenthpoint/internal/scalehouse/housetest"
	"tenthpoint/internal/worksheet"
)

// correctedTicket is a scene whose ticket 2 corrects the moisture of ticket 1.
func correctedTicket(t testing.TB) *scene {
	s := housetest.New(t)
	s.At("2026-10-01 15:10")
	s.Ticket()
	s.As(housetest.Manager)
	id, err := scalehouse.Correct(ctx, s.Desk, 1, "moisture typed wrong")
	must(t, err)
	s.Sample(id, "19.5", housetest.Found("bcfm", "3.4", quantity.Percent))
	_, err = scalehouse.Issue(ctx, s.Desk, id)
	must(t, err)
	return s
}

func TestProofPapers(t *testing.T) {
	s := correctedTicket(t)
	seventeen := quantity.Of("17.0", quantity.Percent)
	doc := explanation.Compose(s.Proof(2, office.ProofOptions{Moisture: &seventeen}))
	housetest.Golden(t, "proof.txt", doc.Text(96))
	housetest.Golden(t, "proof.pdf.txt", housetest.PDFText(t, doc, report.Page{}))
}

// The working of an ordinary ticket takes no more than two pages; the check page
// is the third.
func TestProofIsShort(t *testing.T) {
	s := correctedTicket(t)
	pages, err := pdfwords.Pages(housetest.PDF(t, explanation.Compose(s.Proof(2, office.ProofOptions{})), report.Page{}))
	must(t, err)
	if len(pages) != 3 || !strings.Contains(strings.Join(pages[2], "\n"), "How to check this by hand") {
		t.Errorf("%d pages, the third is %.200q", len(pages), pages[len(pages)-1])
	}
}

// Every step of the working is in the proof, in order, with its figure, its arithmetic and, where
// it took nothing, its reason.
func TestProofTellsEveryStep(t *testing.T) {
	f := correctedTicket(t).Proof(2, office.ProofOptions{})
	var told []report.Step
	for _, b := range explanation.Compose(f).Blocks {
		if steps, ok := b.(report.Steps); ok {
			for _, one := range steps.Steps {
				if !one.Part {
					told = append(told, one)
				}
			}
		}
	}
	steps := f.Settlement.Sheet.Steps()
	if len(told) != len(steps) {
		t.Fatalf("%d steps are told of %d", len(told), len(steps))
	}
	for i, s := range steps {
		explained := strings.Join(told[i].Explain, "\n")
		if told[i].Label != s.Label().String() || !strings.Contains(explained, s.Figures()) && s.Figures() != s.Printed() {
			t.Errorf("%s is told as %q: %s", s.ID(), told[i].Label, explained)
		}
		isSkipped := s.Kind() == worksheet.NotApplied
		if !isSkipped && told[i].Figure != s.Printed() || isSkipped && !strings.Contains(told[i].Figure+explained, f.Load.Details.Under.Remark(s.Note()).String()) {
			t.Errorf("%s is told with %q: %s", s.ID(), told[i].Figure, explained)
		}
	}
}

// A what-if at another moisture is the very ticket that a correction to that
// moisture would bring, figure for figure.
func TestWhatIfIsAFreshSettlement(t *testing.T) {
	for _, moisture := range []string{"14.9", "15.0", "17.0", "17.9", "18.1", "24.3"} {
		s := housetest.New(t)
		s.Ticket()
		m := quantity.Of(moisture, quantity.Percent)
		f := s.Proof(1, office.ProofOptions{Moisture: &m})
		s.As(housetest.Manager)
		id, err := scalehouse.Correct(ctx, s.Desk, 1, "as asked")
		must(t, err)
		s.Sample(id, moisture)
		number, err := scalehouse.Issue(ctx, s.Desk, id)
		must(t, err)
		l, err := office.Ticket(ctx, s.Desk, number)
		must(t, err)
		settled := false
		for _, w := range f.WhatIfs {
			if strings.HasPrefix(w.Name.String(), "moisture "+moisture+" %") {
				settled = true
				for id, want := range l.Settled.Figures {
					if step, ok := w.Settlement.Sheet.Step(id); !ok || !step.Value().Equal(want) {
						t.Errorf("%s: %s is %v in the what-if and %s on the ticket", w.Name, id, step, want)
					}
				}
			}
		}
		if !settled {
			t.Errorf("there is no what-if at %s", moisture)
		}
	}
}

// TestChangesOfWhatIfs: every column of the table of differences is the difference of the table of
// figures, also those that are sums.
func TestChangesOfWhatIfs(t *testing.T) {
	s := housetest.New(t)
	_, number := s.Ticket()
	tables := map[string]report.Table{}
	for _, b := range explanation.Compose(s.Proof(number, office.ProofOptions{})).Blocks {
		if table, ok := b.(report.Table); ok {
			tables[table.Name.String()] = table
		}
	}
	figures, changes := tables["what if"].Rows, tables["what if, difference"].Rows
	if len(changes) == 0 || len(figures) != len(changes)+1 {
		t.Fatalf("%d rows of figures, %d of changes", len(figures), len(changes))
	}
	plain := func(cell message.Text) quantity.Amount {
		return quantity.Of(strings.ReplaceAll(strings.TrimPrefix(cell.String(), "+"), ",", ""), quantity.Plain)
	}
	for n, row := range changes {
		for i, cell := range row.Cells[1:] {
			was, is := figures[0].Cells[i+1], figures[n+1].Cells[i+1]
			if was.Equal(is) && strings.Trim(was.String(), "0123456789.,-") != "" {
				continue // a price that is not set
			}
			if cell.IsZero() || !plain(cell).Equal(plain(is).Sub(plain(was))) {
				t.Errorf("%s, %s: %q, from %s to %s", row.Cells[0], tables["what if"].Columns[i+1].Title, cell, was, is)
			}
		}
	}
}

func TestWhatIfsThatCannotBe(t *testing.T) {
	s := housetest.New(t)
	s.Ticket()
	wet := quantity.Of("101", quantity.Percent)
	f := s.Proof(1, office.ProofOptions{Moisture: &wet})
	text := explanation.Compose(f).Text(200)
	if !strings.Contains(text, "With moisture 101 %, as asked the load could not have been settled: Moisture is 101 %") {
		t.Errorf("the proof does not say why:\n%s", text)
	}
	_, err := office.Proof(ctx, s.Desk, 1, office.ProofOptions{Edition: "no-such"})
	refused(t, err, errortest.NotFound("no-such", "corn-house-2026"))
	_, err = office.Proof(ctx, s.Desk, 77, office.ProofOptions{})
	refused(t, err, errortest.NotFound("77"))
}

// nextCorn is the same schedule with dearer drying and more handling, for the
// same days: what a manager puts in place of the first.
var nextCorn = strings.NewReplacer(
	`id = "corn-house-2026"`, `id = "corn-house-2026-b"`, `"0.04 $/bu/pt"`, `"0.06 $/bu/pt"`, `rate = "0.5 %"`, `rate = "0.8 %"`).Replace(housetest.HouseCorn)

func readRates(t testing.TB, text string) *rates.Set {
	t.Helper()
	e, err := rates.Read("next.toml", []byte(text))
	must(t, err)
	set, wrong := rates.NewSet(e)
	if len(wrong) > 0 {
		t.Fatal(wrong)
	}
	return set
}

// A dispute raised after the rates have changed, and with the old edition gone from the disk,
// recalculates the ticket exactly as it was issued; the new edition is shown beside it as a
// what-if, settled by the new figures.
func TestDisputeAcrossAChangeOfEdition(t *testing.T) {
	s := housetest.New(t)
	_, number := s.Ticket()
	before := s.Proof(number, office.ProofOptions{})
	s.UseRates(readRates(t, nextCorn))
	s.At("2027-02-10 10:00")
	s.As(housetest.Manager).Answered()
	id, err := disputes.Raise(ctx, s.Desk, dispute.Raised{Ticket: number, By: "Ada Field", About: "rates", Claim: "handling was 0.8 % last time"})
	must(t, err)
	after := s.Proof(number, office.ProofOptions{})
	if before.Settlement.Sheet.Digest() != after.Settlement.Sheet.Digest() {
		t.Error("the working changed with the rates on the disk")
	}
	l, err := office.Ticket(ctx, s.Desk, number)
	must(t, err)
	for id, was := range l.Settled.Figures {
		if step, ok := after.Settlement.Sheet.Step(id); !ok || !step.Value().Equal(was) {
			t.Errorf("%s was issued as %s and works out as %v", id, was, step)
		}
	}
	other := after.WhatIfs[len(after.WhatIfs)-2]
	if !strings.Contains(other.Name.String(), "corn-house-2026-b") {
		t.Fatalf("what-ifs: %q", other.Name)
	}
	// 28,000 lb at 0.8 % handling is 224 lb; 500 bu x 3 pt x $0.06 is $90.00.
	for id, want := range map[string]string{"handling": "224 lb", "drying": "90 $", "shrink.water": "988 lb"} {
		if step, ok := other.Settlement.Sheet.Step(id); !ok || !step.Value().Equal(housetest.AmountOf(t, want)) {
			t.Errorf("by the other edition %s is %v, want %s", id, step, want)
		}
	}
	doc, err := office.DisputeFile(ctx, s.Desk, id)
	must(t, err)
	housetest.Golden(t, "dispute.txt", doc.Text(96))
	s.Verify()
}

// A correction of a correction: what the steps changed adds up to what the whole
// chain changed.
func TestDifferencesOfAChainAddUp(t *testing.T) {
	s := correctedTicket(t)
	id, err := scalehouse.Correct(ctx, s.Desk, 2, "tare was the trailer's")
	must(t, err)
	s.Weigh(id, load.Tare, 23000)
	_, err = scalehouse.Issue(ctx, s.Desk, id)
	must(t, err)
	chain, err := office.Chain(ctx, s.Desk, 2)
	must(t, err)
	if len(chain) != 3 || chain[0].Number != 1 || chain[2].Number != 3 {
		t.Fatalf("chain of %d", len(chain))
	}
	first, err := office.Compare(ctx, s.Desk, 1, 2)
	must(t, err)
	second, err := office.Compare(ctx, s.Desk, 2, 3)
	must(t, err)
	whole, err := office.Compare(ctx, s.Desk, 1, 3)
	must(t, err)
	for _, line := range whole.Lines {
		sum := quantity.Zero(line.Change.Value().Unit())
		for _, one := range []office.Difference{first, second} {
			if l, ok := one.Line(line.ID); ok {
				sum = sum.Add(l.Change.Value())
			}
		}
		if !sum.Equal(line.Change.Value()) {
			t.Errorf("%s changed by %s in two steps, by %s in one", line.ID, sum, line.Change.Value())
		}
	}
	for id, want := range map[string]string{"tare": "-1300 lb", "net": "1300 lb", "moisture": "1.5 %", "shrink.water": "563 lb"} {
		if l, ok := whole.Line(id); !ok || !l.Change.Value().Equal(housetest.AmountOf(t, want)) {
			t.Errorf("%s: %+v, want %s", id, l.Change, want)
		}
	}
	_, err = scalehouse.Correct(ctx, s.Desk, 1, "once more")
	refused(t, err, errortest.WrongPhase("1", "2"))
	if got := s.InBin("Pit 1"); !housetest.AmountOf(t, got).Equal(chain[2].Settled.Figures["settled"]) {
		t.Errorf("the bin holds %s, the ticket in force is for %s", got, chain[2].Settled.Figures["settled"])
	}
	if text := explanation.Compose(s.Proof(1, office.ProofOptions{})).Text(96); !strings.Contains(text, "CORRECTED BY TICKET 2") {
		t.Error("the first proof does not say that it was corrected")
	}
	s.Verify()
}

func TestProofOfGrainThatLeft(t *testing.T) {
	s := housetest.New(t)
	text := explanation.Compose(s.Proof(s.Leave("Pit 1", 40000), office.ProofOptions{})).Text(96)
	for _, want := range []string{"taken out on 2026-10-01", "64,000 lb − 24,000 lb = 40,000 lb", "714.29 bu"} {
		if !strings.Contains(text, want) {
			t.Errorf("does not say %q:\n%s", want, text)
		}
	}
}

func TestDisputesDue(t *testing.T) {
	s := housetest.New(t)
	s.Ticket()
	s.At("2026-10-02 09:00")
	s.Ticket()
	for _, n := range []int64{2, 1} {
		_, err := disputes.Raise(ctx, s.Desk, dispute.Raised{Ticket: n, By: "Ada Field", About: "moisture", Claim: "it was drier"})
		must(t, err)
	}
	due, err := office.DisputesDue(ctx, s.Desk)
	must(t, err)
	if len(due) != 2 || due[0].Raised.Ticket != 1 || due[1].Raised.Ticket != 2 || due[0].Raised.Due.String() != "2026-10-04" {
		t.Errorf("due: %+v", due)
	}
	s.As(housetest.Manager)
	must(t, disputes.Continue(ctx, s.Desk, due[0].ID, dispute.Decided{Decision: "the retained sample was lost; the ticket stands", Stands: true, Day: housetest.Oct2}))
	if due, err = office.DisputesDue(ctx, s.Desk); err != nil || len(due) != 1 {
		t.Errorf("due: %+v %v", due, err)
	}
	of1, err := office.DisputesOf(ctx, s.Desk, 1)
	must(t, err)
	if len(of1) != 1 || of1[0].Phase != dispute.Closed {
		t.Errorf("of ticket 1: %+v", of1)
	}
	_, err = office.DisputeByID(ctx, s.Desk, "D9")
	refused(t, err, errortest.NotFound("D9"))
}
