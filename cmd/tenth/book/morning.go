package book

import (
	"path/filepath"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/cmd/tenth/yard"
	"tenthpoint/internal/atomicfile"
	"tenthpoint/internal/daysheet"
	"tenthpoint/internal/demo"
	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/internal/report"
)

// demoMorning is the terminal's version of what the window shows: it receives a truck at the
// invented elevator, and writes its papers and the day's sheet.
type demoMorning struct {
	Dir string `required:"" help:"Folder for the book and the papers; made if it is not there." placeholder:"DIR"`
	terminal.RatesFlags
}

func (demoMorning) Help() string {
	return `    tenth demo morning --dir morning`
}

// morningSeason is the number of earlier loads.
const morningSeason = 60

func (c demoMorning) Run(t *terminal.Terminal) error {
	if err := atomicfile.MakeFolder(c.Dir); err != nil {
		return err
	}
	book := filepath.Join(c.Dir, "demo.book")
	season := demoSeason{Book: book, Loads: morningSeason, Seed: 1, RatesFlags: c.RatesFlags}
	if err := season.Run(t); err != nil {
		return err
	}
	flags := terminal.BookFlags{Book: book, RatesFlags: c.RatesFlags}
	return flags.WithBook(t, terminal.ReadWrite, demo.Clerk, func(p *terminal.Session) error { return c.papers(p) })
}

// papers receives one truck and writes its slip and its working.
func (c demoMorning) papers(p *terminal.Session) error {
	receive := yard.Receive{
		DetailFlags: terminal.DetailFlags{Grower: "102", Commodity: "corn", Truck: "7", Bin: "P1", Price: "4.12"},
		WeightFlags: terminal.WeightFlags{Gross: []string{"77120"}, Tare: []string{"25340"}, Manual: "read from the indicator", DriverOn: "off"},
		SampleFlags: terminal.SampleFlags{Moisture: "18.3", Factor: []string{"test-weight=54.6", "bcfm=2.4"}, Tester: demo.Tester, Sample: "morning-1", Kept: "Shelf A1"},
	}
	l, err := receive.Enter(p)
	if err != nil {
		return err
	}
	flags := terminal.PaperFlags{Out: c.Dir, EachOwner: true}
	files, _, err := p.Paper(flags, l, 0)
	if err != nil {
		return err
	}
	for _, more := range []func(*terminal.Session, *load.Load) ([]string, error){c.working, c.daySheet} {
		written, err := more(p, l)
		if err != nil {
			return err
		}
		files = append(files, written...)
	}
	p.Say("Ticket %d: %s, %s.", l.Number, l.Details.Grower.Name, l.Details.Commodity)
	for _, file := range files {
		p.Say("Written: %s", file)
	}
	return nil
}

// working writes the explained working beside the slip.
func (c demoMorning) working(p *terminal.Session, l *load.Load) ([]string, error) {
	s, err := office.Resettle(p, p.Desk, l)
	if err != nil {
		return nil, err
	}
	text := p.Printer.Text(terminal.EditionLine(s.Edition)) + "\n\n" + p.Working(s, l, 76)
	return p.Files(c.Dir, terminal.PaperName(l.Number, 0, 0)+"-working", nil, []byte(text))
}

// daySheet writes today's sheet as the manager would sign it.
func (c demoMorning) daySheet(p *terminal.Session, l *load.Load) ([]string, error) {
	sheet, err := office.DaySheet(p, p.Desk, l.IssuedDay)
	if err != nil {
		return nil, err
	}
	paper := daysheet.Compose(sheet, p.Profile())
	pdf, err := paper.PDF(report.PageFor(p.Profile().Rules))
	if err != nil {
		return nil, err
	}
	return p.Files(c.Dir, "day-"+l.IssuedDay.String(), pdf, []byte(paper.Text(100)))
}
