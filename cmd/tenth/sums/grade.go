package sums

import (
	"slices"
	"strings"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/law"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/paper/plain"
)

// Grade grades a sample by the published tables.
type Grade struct {
	terminal.LanguageFlag
	terminal.BookFlags
	terminal.RuleSetFlags
	Load      string         `arg:"" optional:"" help:"A load, or the number of its ticket. Without it, the sample is what the flags say." placeholder:"LOAD"`
	Commodity string         `help:"The grain, by id or name." placeholder:"GRAIN"`
	Moisture  string         `help:"Moisture, percent wet basis." placeholder:"PERCENT"`
	Factor    []string       `sep:"none" help:"A result of the sample; may be repeated." placeholder:"FACTOR=RESULT"`
	NoneSeen  bool           `help:"Whatever is counted or noticed and not given was looked for and not found."`
	Class     string         `help:"The name the Canadian order lists the grain under, where it has several." placeholder:"NAME"`
	Width     terminal.Width `help:"Width of the page, in letters." default:"88"`
	JSON      bool           `help:"Print for programs: every figure as text."`
}

func (Grade) Help() string {
	return `The United States grade with what held it down, and the Canadian moisture class. What was not tested leaves the grade open. It is advice: an official grade is given only by a licensed inspector.

    tenth grade --commodity corn --factor test-weight=53.8 --factor damage=2.1 --factor bcfm=1.2
    tenth grade --commodity corn --factor tw=56 --factor dkt=2.1 --factor ht=0 --factor bcfm=1.2 --none-seen
    tenth grade --commodity canola --moisture 10.4
    tenth grade 1042`
}

func (c Grade) Run(t *terminal.Terminal) error {
	if c.Load != "" {
		return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
			l, err := p.LoadNamed(c.Load)
			if err != nil {
				return err
			}
			c.Rules = p.Profile().Rules
			graded, err := office.Grade(p, p.Desk, l)
			if err != nil {
				return err
			}
			return c.tell(t, graded)
		})
	}
	graded, err := c.typed(t)
	if err != nil {
		return err
	}
	return c.tell(t, graded)
}

// typed grades the sample of the flags.
func (c Grade) typed(t *terminal.Terminal) (office.Grading, error) {
	if c.Commodity == "" {
		return office.Grading{}, terminal.Refusal("Name a load or its ticket, or give the sample with --commodity, --moisture and --factor", "there is nothing to grade")
	}
	crop, err := entry.Commodity(c.Commodity)
	if err != nil {
		return office.Grading{}, err
	}
	var s load.Sample
	if c.Moisture != "" {
		m, err := entry.Moisture().Parse(c.Moisture)
		if err != nil {
			return office.Grading{}, err
		}
		s.Moisture = &load.Moisture{Percent: m}
	}
	for _, text := range c.Factor {
		found, err := terminal.ParseFinding(crop, crop, text)
		if err != nil {
			return office.Grading{}, err
		}
		s.Findings = append(s.Findings, found)
	}
	laws, err := c.ReadLaws("")
	if err != nil {
		return office.Grading{}, err
	}
	tables, err := laws.On(t.LocalDate())
	if err != nil {
		return office.Grading{}, err
	}
	s.NoneSeen = c.NoneSeen
	return office.GradeSample(tables, crop.ID, s, c.Class)
}

func (c Grade) tell(t *terminal.Terminal, g office.Grading) error {
	if c.JSON {
		return t.PrintJSON(gradingJSON(g))
	}
	para := func(indent, text string) {
		for _, part := range plain.Paragraph(text, int(c.Width)-len(indent)) {
			t.Say("%s%s", indent, part)
		}
	}
	list := func(heading string, lines []string) {
		if len(lines) > 0 {
			t.Say("%s", heading)
		}
		for _, line := range lines {
			para("    ", line)
		}
	}
	if g.US == nil {
		para("", g.Commodity.Name+": there is no United States grade table here.")
	} else {
		para("", g.Commodity.Name+": "+g.US.Words()+".")
		list("Not tested, and may lower it", g.US.NotTested)
		list("Held down by", g.US.HeldDownBy)
		list("Special grade, because", g.US.SpecialBecause)
		list("Not told, for want of a test", g.US.SpecialNotTested)
		list("Noticed", slices.Concat(g.US.Faults, g.US.Cautions))
		list("Not judged here", nonEmpty(g.US.NotJudged))
		list("Tables", nonEmpty(g.US.Source))
	}
	if c.Rules == "canada" {
		para("", "The grade is by the tables of the United States: of the Canadian ones only a few figures of wheat were read.")
	}
	if c.Rules == "canada" || c.Class != "" {
		list("Canadian moisture class", classes(t, g.Canada))
	} else {
		g.By = slices.DeleteFunc(g.By, func(f *law.File) bool { return f.Kind == grain.KindClasses })
	}
	list("Law", inForceSince(g.By))
	t.Say("%s", grain.Advisory)
	return nil
}

// inForceSince lists for each file of law since when it is in force, and that it is to be confirmed.
func inForceSince(files []*law.File) []string {
	out := make([]string, len(files))
	for i, f := range files {
		out[i] = f.Title + ", " + f.Period().String() + ". " + law.Confirm
	}
	return out
}

// classes are Canadian classes, a line for each name of the grain that has one; the names are left
// out where all of them have the same.
func classes(t *terminal.Terminal, all []grain.MoistureClass) []string {
	var out []string
	alike := len(all) > 1
	for _, class := range all {
		alike = alike && class.Name == all[0].Name && class.Interval() == all[0].Interval()
		out = append(out, class.Name+", "+class.Interval()+": "+class.Grain)
	}
	if alike {
		return []string{t.Printer.Text(message.New("%v, %v, whatever its class", t.Printer.Text(message.Words(all[0].Name)), all[0].Interval()))}
	}
	return out
}

// nonEmpty is a list of a text, or of nothing.
func nonEmpty(text string) []string {
	if strings.TrimSpace(text) == "" {
		return nil
	}
	return []string{text}
}
