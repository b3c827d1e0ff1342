package lab

import (
	"fmt"
	"strings"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/office"
	"tenthpoint/internal/scalehouse"
)

// benchTest tests the sample of a load.
type benchTest struct {
	terminal.BookFlags
	terminal.WhoFlags
	readingFlags
	Load       string         `arg:"" help:"The load, as \"tenth yard\" lists it." placeholder:"LOAD"`
	More       bool           `help:"These tests come on top of those written down."`
	Drop       []string       `sep:"none" help:"Leave a test out, by its number and a rule: spoiled:WHY, or farthest-from-middle; may be repeated." placeholder:"TEST=RULE"`
	LetThrough []string       `sep:"none" help:"Override a flag that stops the ticket (a manager's act); may be repeated. For one test, CODE@TEST=REASON." placeholder:"CODE=REASON"`
	Try        bool           `help:"Work it out and write nothing."`
	Working    bool           `help:"Print the whole working."`
	Width      terminal.Width `help:"Width of the printed working, in letters." default:"76"`
	JSON       bool           `help:"Print for programs: every figure as text."`
}

func (benchTest) Help() string {
	return `Several readings make one moisture: their mean, rounded once. The house says how many it asks for, and asks for more near a limit; what makes the figure doubtful is told with what to do. A test is left out only by a rule and a name, and stays listed.

    tenth bench test L12 --meter bench-1 --mass 250 --dial 70 --dial 70.5@66F --dial 70 --at 65F --room 68F
    tenth bench test L12 --meter bench-2 --percent 17.2 --percent 17.4 --at 65F --room 68F
    tenth bench test L12 --more --meter bench-1 --mass 250 --dial 70 --at 65F --room 68F --drop "2=spoiled:grain was spilled"
    tenth bench test L12 --oven 131.4520/128.3020/116.4020
    tenth bench test L12 --typed 17.1 --why "certificate 881 of the state laboratory"`
}

func (c benchTest) Run(t *terminal.Terminal) error {
	how := terminal.ReadWrite
	if c.Try {
		how = terminal.ReadOnly
	}
	return c.WithBook(t, how, c.Who, func(p *terminal.Session) error {
		l, err := p.LoadNamed(c.Load)
		if err != nil {
			return err
		}
		tests, err := c.tests(p, l)
		if err != nil {
			return err
		}
		tested, err := scalehouse.TestSample(p, p.Desk, l, tests)
		if err != nil {
			return err
		}
		if !c.Try {
			if err := scalehouse.RecordTest(p, p.Desk, l.ID, l.Sample, tested); err != nil {
				return err
			}
		}
		return c.tell(p, l, tested)
	})
}

// tests returns the typed readings, after the recorded ones when adding to them, with the decisions
// about them.
func (c benchTest) tests(p *terminal.Session, l *load.Load) (moisture.Tests, error) {
	var t moisture.Tests
	if m := l.Sample.Moisture; c.More && m != nil && m.Bench != nil {
		t = m.Bench.Tests
	} else if c.More {
		return t, terminal.Refusal("Leave --more away", "load %s has no test at the bench yet", l.ID)
	}
	readings, err := c.readings(p, l, len(t.Readings))
	if err != nil {
		return t, err
	}
	t.Readings = append(t.Readings, readings...)
	if err := c.drops(p, &t); err != nil {
		return t, err
	}
	return t, c.overrides(p, &t)
}

func (c benchTest) drops(p *terminal.Session, t *moisture.Tests) error {
	for _, text := range c.Drop {
		test, rule, ok := strings.Cut(text, "=")
		number, err := testNumber(test)
		if !ok || err != nil {
			return terminal.Refusal("Write it like \"2=spoiled:grain was spilled\" or 2=farthest-from-middle", "%q leaves no test out", text)
		}
		name, reason, _ := strings.Cut(rule, ":")
		t.Exclusions = append(t.Exclusions, moisture.Exclusion{Test: number, Rule: moisture.ExclusionRule(strings.TrimSpace(name)), By: p.Who().Name, Reason: strings.TrimSpace(reason)})
	}
	return nil
}

func testNumber(text string) (int, error) {
	var n terminal.TicketNumber
	err := n.UnmarshalText([]byte(text))
	return int(n), err
}

func (c benchTest) overrides(p *terminal.Session, t *moisture.Tests) error {
	for _, text := range c.LetThrough {
		code, reason, ok := strings.Cut(text, "=")
		if !ok {
			return terminal.Refusal("Write it like cold@1=\"warmed by hand\" or meter-overdue=\"checked this noon\"", "%q overrides nothing", text)
		}
		o := moisture.Override{By: p.Who().Name, Reason: strings.TrimSpace(reason)}
		name, test, onTest := strings.Cut(code, "@")
		if o.Code = moisture.Code(strings.TrimSpace(name)); onTest {
			number, err := testNumber(test)
			if err != nil {
				return terminal.Refusal("Write the test's number, like cold@1", "%q names no test", code)
			}
			o.Test = number
		}
		t.Overrides = append(t.Overrides, o)
	}
	return nil
}

// testJSON is a tested sample for programs.
type testJSON struct {
	Load     string     `json:"load"`
	Sample   string     `json:"sample,omitempty"`
	Moisture string     `json:"moisture"`
	Spread   string     `json:"spread,omitempty"`
	Tests    []oneTest  `json:"tests"`
	More     string     `json:"more_tests"`
	Flags    []flagJSON `json:"flags"`
	Stopped  bool       `json:"stopped"`
	Written  bool       `json:"written"`
	Working  any        `json:"working,omitempty"`
}

type oneTest struct {
	Test     string `json:"test"`
	Method   string `json:"method"`
	Moisture string `json:"moisture"`
	Dropped  string `json:"dropped,omitempty"`
}

func (c benchTest) tell(p *terminal.Session, l *load.Load, tested scalehouse.Testing) error {
	r := tested.Result
	out := testJSON{
		Load: l.ID, Moisture: r.Moisture.Printed(), More: fmt.Sprint(r.More), Flags: flagsJSON(r.Flags), Stopped: r.Stopped(), Written: !c.Try,
	}
	if len(r.Outcomes) > 1 {
		out.Spread = r.Spread.Value().String()
	}
	for _, o := range r.Outcomes {
		one := oneTest{Test: fmt.Sprint(o.Reading.Seq), Method: o.Reading.Method.String(), Moisture: o.Step.Value().String()}
		if o.Exclusion != nil {
			one.Dropped = fmt.Sprintf("%s, by %s", o.Exclusion.Rule, o.Exclusion.By)
		}
		out.Tests = append(out.Tests, one)
	}
	if !c.Try {
		now, err := office.Load(p, p.Desk, l.ID)
		if err != nil {
			return err
		}
		out.Sample = now.Sample.Number
	}
	if c.JSON {
		if c.Working {
			out.Working = tested.Sheet
		}
		return p.PrintJSON(out)
	}
	c.print(p, out, tested)
	if c.Try {
		return nil
	}
	return askStart(p, tested.Record.Tests)
}

func (c benchTest) print(p *terminal.Session, out testJSON, tested scalehouse.Testing) {
	for _, t := range out.Tests {
		line := message.New("Test %v by %s: %s", t.Test, t.Method, t.Moisture)
		if t.Dropped != "" {
			line = message.New("%s - left out: %s", line, t.Dropped)
		}
		p.Say("%s", line)
	}
	if out.Spread != "" {
		p.Say("Spread %s.", out.Spread)
	}
	p.Say("Moisture of load %s: %s.", out.Load, out.Moisture)
	tellFlags(p.Terminal, tested.Result.Flags)
	switch {
	case c.Try:
		p.Say("Nothing is written down.")
	default:
		p.Say("Written down as sample %s.", out.Sample)
	}
	if c.Working {
		p.Say("")
		fmt.Fprint(p.Stdout, tested.Sheet.TextIn(int(c.Width), p.HousePrinter()))
	}
}
