package main

import (
	"os"
	"path/filepath"

	"tenthpoint/internal/book/sqlite"
	"tenthpoint/internal/daysheet"
	"tenthpoint/internal/demo"
	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/internal/report"
)

// demoMorning does at a terminal what the window shows: a truck is received at
// the invented elevator, and its papers and the day's sheet are written.
type demoMorning struct {
	Dir string `required:"" help:"Folder for the book and the papers; made if it is not there." placeholder:"DIR"`
	ratesFlags
}

func (demoMorning) Help() string {
	return `    tenth demo morning --dir morning`
}

// morningSeason is how many loads have come before this one.
const morningSeason = 60

func (c demoMorning) Run(t *terminal) error {
	if err := os.MkdirAll(c.Dir, 0o755); err != nil {
		return err
	}
	book := filepath.Join(c.Dir, "demo.book")
	season := demoSeason{Book: book, Loads: morningSeason, Seed: 1, ratesFlags: c.ratesFlags}
	if err := season.Run(t); err != nil {
		return err
	}
	flags := bookFlags{Book: book, ratesFlags: c.ratesFlags}
	return flags.at(t, sqlite.Options{}, demo.Clerk, func(p *post) error { return c.papers(p) })
}

// papers receives one truck and writes its slip and its working.
func (c demoMorning) papers(p *post) error {
	receive := receiveCommand{
		detailFlags: detailFlags{Grower: "102", Commodity: "corn", Truck: "7", Bin: "P1", Price: "4.12"},
		weightFlags: weightFlags{Gross: []string{"77120"}, Tare: []string{"25340"}, Manual: "read from the indicator", DriverOn: "off"},
		sampleFlags: sampleFlags{Moisture: "18.3", Factor: []string{"test-weight=54.6", "bcfm=2.4"}, Tester: demo.Tester, Sample: "morning-1", Kept: "Shelf A1"},
	}
	l, err := receive.receive(p)
	if err != nil {
		return err
	}
	flags := paperFlags{Out: c.Dir, EachOwner: true}
	files, _, err := p.paper(flags, l, 0)
	if err != nil {
		return err
	}
	for _, more := range []func(*post, *load.Load) ([]string, error){c.working, c.daySheet} {
		written, err := more(p, l)
		if err != nil {
			return err
		}
		files = append(files, written...)
	}
	p.say("Ticket %d: %s, %s.", l.Number, l.Details.Grower.Name, l.Details.Commodity)
	for _, file := range files {
		p.say("Written: %s", file)
	}
	return nil
}

// working writes the explained working beside the slip.
func (c demoMorning) working(p *post, l *load.Load) ([]string, error) {
	s, err := office.Resettle(p, p.Desk, l)
	if err != nil {
		return nil, err
	}
	text := p.language()(editionLine(s.Edition)) + "\n\n" + s.Sheet.TextIn(76, p.workingOf(l))
	return p.files(c.Dir, paperName(l.Number, 0, 0)+"-working", nil, []byte(text))
}

// daySheet writes what came in today as the manager would sign it.
func (c demoMorning) daySheet(p *post, l *load.Load) ([]string, error) {
	sheet, err := office.DaySheet(p, p.Desk, l.IssuedDay)
	if err != nil {
		return nil, err
	}
	paper := daysheet.Compose(sheet, p.Profile())
	pdf, err := paper.PDF(report.PageFor(p.Profile().Rules))
	if err != nil {
		return nil, err
	}
	return p.files(c.Dir, "day-"+l.IssuedDay.String(), pdf, []byte(paper.Text(100)))
}
