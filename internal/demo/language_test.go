package demo

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"tenthpoint/internal/book"
	"tenthpoint/internal/book/sqlite"
	"tenthpoint/internal/dispute"
	"tenthpoint/internal/i18n"
	"tenthpoint/internal/i18n/unsaid"
	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/internal/office/examiner"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/disputes"
	"tenthpoint/internal/scaleticket"
	"tenthpoint/internal/scaleticket/sheet"
	"tenthpoint/schedules"
)

// Every paper of a season at an elevator that speaks another language is in it, down to the last source
// of the last step: each of its words is one of the texts in that language or a name of the elevator.
func TestEveryPaperIsInTheLanguageOfTheHouse(t *testing.T) {
	for code, loads := range map[string]int{"fr": 300, "es": 120} {
		t.Run(code, func(t *testing.T) { allInLanguage(t, code, loads) })
	}
}

func allInLanguage(t *testing.T, code string, loads int) {
	kept := filled(t, Options{Loads: loads, Seed: 7, Now: noon, Rates: shipped(t), Language: code})
	d := opened(t, kept)
	must(t, d.SignIn(Manager))
	r := reader{Finder: unsaid.In(code, nil, ownWords(t, d, kept)...), t: t, told: map[string]bool{}}
	for i := range doubted {
		disputed(t, d, kept, i)
	}
	r.daysAndRegisters(d)
	r.accountsAndMeters(d)
	r.ticketsOf(d, kept)
	r.disputesOf(d)
	if lost := i18n.In(code).Missing(); len(lost) > 0 {
		t.Errorf("%d texts are lost: %q", len(lost), lost)
	}
}

// reader holds papers against the words of a language.
type reader struct {
	unsaid.Finder
	t    *testing.T
	told map[string]bool // each finding once
}

func (r reader) read(paper, text string) {
	r.t.Helper()
	for _, line := range strings.Split(text, "\n") {
		line = strings.TrimSpace(line)
		left := strings.Join(r.Left(fromFile.ReplaceAllString(line, "")), " ")
		if left != "" && !r.told[left] {
			r.told[left] = true
			r.t.Errorf("%s: %q is left in English: %s", paper, line, left)
		}
	}
}

// fromFile matches what papers quote from the file of an edition, or name in it: the words of the
// file are the same in every language.
var fromFile = regexp.MustCompile(`^[a-zA-Z0-9/-]+\.(pdf|csv|txt|toml)$|(?:Barème affiché, ligne|Tarifa publicada, renglón) \d+ ?: .*|[a-z0-9_ -]+(renglón \d+)?(, [a-z_]+)?, (?:ligne|renglón) \d+|[a-z]+(-[a-z0-9]+)+`)

func (r reader) document(d report.Document) { r.read(d.Title.String(), d.Text(3000)) }

func (r reader) daysAndRegisters(d *scalehouse.Desk) {
	from, to := quantity.MustDate("2026-08-01"), d.Today()
	for day := from; !day.After(to); day = day.AddDays(1) {
		paper, err := office.DayPaper(ctx, d, day)
		must(r.t, err)
		r.document(paper)
	}
	registers, err := examiner.Registers(ctx, d, from, to)
	must(r.t, err)
	for _, one := range registers {
		r.document(one.Paper)
	}
	position, err := office.PositionPaper(ctx, d, from, to)
	must(r.t, err)
	r.document(position)
	set, err := examiner.Papers(ctx, d, to.AddDays(-2), to, report.Page{}, nil)
	must(r.t, err)
	for _, f := range set {
		if strings.HasSuffix(f.Name, ".txt") || strings.HasSuffix(f.Name, ".csv") {
			r.read(f.Name, string(f.Bytes))
		}
	}
}

func (r reader) accountsAndMeters(d *scalehouse.Desk) {
	growers, err := office.Growers(ctx, d)
	must(r.t, err)
	for _, g := range growers {
		statement, err := office.Statement(ctx, d, g.ID, quantity.Date{}, quantity.Date{})
		must(r.t, err)
		r.document(statement)
	}
	for _, id := range []string{dialID, meterID} {
		log, err := office.ReadMeterLog(ctx, d, id, "corn", 0)
		must(r.t, err)
		r.document(log.Paper(d.Profile(), d.Today()))
	}
}

// ticketsOf reads the slip, the slip of each owner, the label and the proof of
// every load.
func (r reader) ticketsOf(d *scalehouse.Desk, kept *sqlite.Book) {
	rows, err := kept.Loads(ctx, book.LoadFilter{})
	must(r.t, err)
	for _, row := range rows {
		l, err := office.Load(ctx, d, row.ID)
		must(r.t, err)
		ticket := scaleticket.Ticket{House: d.Profile(), Load: l}
		if row.Ticket > 0 {
			ticket.Settlement, err = office.Resettle(ctx, d, l)
			must(r.t, err)
			r.proof(d, row)
		}
		for ticket.Owner = range len(l.Details.Shares) + 1 {
			r.read("slip of "+row.ID, sheet.Text(scaleticket.Compose(ticket), 300))
		}
		if label, err := scaleticket.SampleLabel(ticket); err == nil {
			r.read("label of "+row.ID, strings.Join(append(label.Lines, label.Title, label.Until, label.Mark), "\n"))
		}
	}
}

func (r reader) proof(d *scalehouse.Desk, row book.LoadRow) {
	odd := row.Corrects > 0 || row.Manual != "" || row.Accepted != "" || row.Flags != ""
	if row.Direction != string(load.Inbound) || row.Ticket%5 != 1 && !odd {
		return // one in five, and all with something to tell
	}
	paper, err := office.Proof(ctx, d, row.Ticket, office.ProofOptions{})
	must(r.t, err)
	r.document(paper)
	l, err := office.Ticket(ctx, d, row.Ticket)
	must(r.t, err)
	s, err := office.Resettle(ctx, d, l)
	must(r.t, err)
	r.read("working", s.Sheet.TextIn(300, i18n.In(d.Profile().Language)))
}

func (r reader) disputesOf(d *scalehouse.Desk) {
	all, err := office.Disputes(ctx, d)
	must(r.t, err)
	if len(all) != len(doubted) {
		r.t.Errorf("%d disputes were raised, want %d", len(all), len(doubted))
	}
	for _, one := range all {
		file, err := office.DisputeFile(ctx, d, one.ID)
		must(r.t, err)
		r.document(file)
	}
}

// doubted are the phases the disputes of the test reach.
var doubted = []dispute.Phase{dispute.Open, dispute.Testing, dispute.Closed}

// disputed raises a dispute about a ticket that has a sample and takes it on.
func disputed(t *testing.T, d *scalehouse.Desk, kept *sqlite.Book, n int) {
	t.Helper()
	rows, err := kept.Loads(ctx, book.LoadFilter{})
	must(t, err)
	rows = slices.DeleteFunc(rows, func(r book.LoadRow) bool {
		return r.Phase != string(load.Ticketed) || r.Direction != string(load.Inbound)
	})
	day := d.Today()
	id, err := disputes.Raise(ctx, d, dispute.Raised{Ticket: rows[n].Ticket, By: "Owen Tarrant", About: "moisture", Claim: "hot", Day: day, Rule: "canada"})
	must(t, err)
	steps := []dispute.Fact{
		dispute.Sent{Sample: "S-1", SealedBy: Manager, Witness: Clerk, Airtight: true, To: Tester, Day: day},
		dispute.Resulted{By: Tester, Certificate: "C-1", Day: day, Finding: "hot"},
		dispute.Decided{Decision: "hot", Stands: true, Day: day},
	}
	for _, f := range steps[:[]int{0, 1, 3}[n]] {
		must(t, disputes.Continue(ctx, d, id, f))
	}
}

// ownWords are the names of the elevator and what its people have typed: they are the same in every
// language.
func ownWords(t *testing.T, d *scalehouse.Desk, kept *sqlite.Book) []string {
	t.Helper()
	p := d.Profile()
	own := append([]string{p.Business, p.Street, p.Town, p.Licence, wrongTare, wrongMoisture, wrongGrower, "taken for the flat store, blended off"},
		slices.Concat(whyByHand, whyRefused, whyVoid)...)
	growers, err := office.Growers(ctx, d)
	must(t, err)
	for _, g := range growers {
		own = append(own, g.Name, g.Address)
	}
	for _, one := range people {
		own = append(own, one.Name)
	}
	for _, m := range meters() {
		own = append(own, m.Name(), m.Calibration)
	}
	set, err := schedules.Editions()
	must(t, err)
	for _, e := range set.All() {
		own = append(own, e.Title, e.Origin.By, e.Origin.Document)
		for _, rule := range e.Discounts {
			own = append(own, rule.ID)
		}
	}
	return append(own, ownOfLoads(t, d, kept)...)
}

// laws are the names of laws and of what publishes figures.
var laws = []string{"Minnesota Statutes", "Indiana Code", "Arkansas Code", "Iowa Code", "North Dakota Century Code"}

// ownOfLoads returns the names in loads.
func ownOfLoads(t *testing.T, d *scalehouse.Desk, kept *sqlite.Book) []string {
	t.Helper()
	own := slices.Clone(laws)
	rows, err := kept.Loads(ctx, book.LoadFilter{})
	must(t, err)
	for _, row := range rows {
		l, err := office.Load(ctx, d, row.ID)
		must(t, err)
		own = append(own, l.Details.Driver, l.Details.Consignee, l.Details.Truck.Plate, l.Details.Truck.Trailer, l.Sample.Kept)
	}
	return own
}
