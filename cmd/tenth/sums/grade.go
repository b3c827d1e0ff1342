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
	para := func(indent string, text message.Sayable) {
		for _, part := range plain.Paragraph(t.Printer.Text(text), int(c.Width)-len(indent)) {
			t.Say("%s%s", indent, part)
		}
	}
	list := func(heading message.Text, lines []message.Text) {
		if len(lines) > 0 {
			para("", heading)
		}
		for _, line := range lines {
			para("    ", line)
		}
	}
	if g.US == nil {
		para("", message.New("%s: there is no United States grade table here.", g.Commodity.Name))
	} else {
		para("", message.New("%s: %s.", g.Commodity.Name, g.US.Words()))
		list(message.New("Not tested, and may lower it"), texts(g.US.NotTested))
		list(message.New("Grade-determining factor"), messages(g.US.HeldDown))
		list(message.New("Special grade, because"), g.US.SpecialBecause)
		list(message.New("Not told, for want of a test"), texts(g.US.SpecialNotTested))
		list(message.New("Noticed"), slices.Concat(g.US.Faults, g.US.Cautions))
		list(message.New("Not judged here"), nonEmpty(g.US.NotJudged))
		list(message.New("Tables"), nonEmpty(g.US.Source))
	}
	if c.Rules == "canada" {
		para("", message.New("The grade is by the tables of the United States: of the Canadian ones only a few figures of wheat were read."))
	}
	if c.Rules == "canada" || c.Class != "" {
		list(message.New("Canadian moisture class"), classes(g.Canada))
	} else {
		g.By = slices.DeleteFunc(g.By, func(f *law.File) bool { return f.Kind == grain.KindClasses })
	}
	list(message.New("Law"), inForceSince(g.By))
	para("", message.New(grain.Advisory))
	return nil
}

// inForceSince lists for each file of law since when it is in force, and that it is to be confirmed.
func inForceSince(files []*law.File) []message.Text {
	out := make([]message.Text, len(files))
	for i, f := range files {
		out[i] = law.ToConfirm(message.List(", ", message.Words(f.Title), f.Period()))
	}
	return out
}

// classes are Canadian classes, a line for each name of the grain that has one; the names are left
// out where all of them have the same.
func classes(all []grain.MoistureClass) []message.Text {
	var out []message.Text
	alike := len(all) > 1
	for _, class := range all {
		alike = alike && class.Name == all[0].Name && class.Interval().Equal(all[0].Interval())
		out = append(out, message.New("%s, %s: %s", class.Name, class.Interval(), class.Grain))
	}
	if alike {
		return []message.Text{message.New("%s, %s, whatever its class", all[0].Name, all[0].Interval())}
	}
	return out
}

// nonEmpty is a list of a text, or of nothing.
func nonEmpty(text string) []message.Text {
	if strings.TrimSpace(text) == "" {
		return nil
	}
	return []message.Text{message.Words(text)}
}

// texts are names of factors and grades.
func texts(names []string) []message.Text {
	out := make([]message.Text, len(names))
	for i, name := range names {
		out[i] = message.Words(name)
	}
	return out
}

// messages are the texts of things that have one.
func messages[S message.Sayable](all []S) []message.Text {
	out := make([]message.Text, len(all))
	for i, one := range all {
		out[i] = one.Message()
	}
	return out
}
