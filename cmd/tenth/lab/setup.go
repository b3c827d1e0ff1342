package lab

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/dryness"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/message"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
)

// benchSetup prints or changes the rules of testing.
type benchSetup struct {
	terminal.BookFlags
	terminal.WhoFlags
	Authority string   `help:"Rule meters are checked by: us-official, canada, handbook-44, or house with --limit." placeholder:"RULE"`
	Limit     string   `help:"Most a meter may be off under the house's own rule, in points." placeholder:"POINTS"`
	Every     int      `help:"Days between checks of a meter; 0 leaves it to the rule." default:"-1" placeholder:"DAYS"`
	Warn      int      `help:"Days before that a check shows as due." default:"-1" placeholder:"DAYS"`
	Samples   string   `help:"Rule samples are kept by: us-inbound-truck, canada, montana, or house for the days of the set-up." placeholder:"RULE"`
	Policy    []string `sep:"none" help:"How a grain is tested, \"every\" for all others; may be repeated." placeholder:"corn:count=2,spread=0.4,near=0.5,near-count=3,drop=spoiled"`
	Dry       []string `sep:"none" help:"What is dry, by grain; may be repeated." placeholder:"corn:buy=15,short=15,long=13,aerate=1,pit=P2,dries"`
	Stop      []string `help:"Flags that stop a ticket." placeholder:"CODE,CODE"`
	GoOn      []string `help:"Flags that no longer stop a ticket." placeholder:"CODE,CODE"`
	Cold      string   `help:"Sample temperature under which meters are unreliable." placeholder:"TEMPERATURE"`
	Estimate  string   `help:"Moisture over which meters only estimate." placeholder:"PERCENT"`
	JSON      bool     `help:"Print for programs: every figure as text."`
}

func (benchSetup) Help() string {
	return `Without flags the set-up is shown. Changing it is a manager's act.

    tenth bench setup --authority canada --samples canada
    tenth bench setup --policy corn:count=2,spread=0.4 --stop cold,meter-overdue
    tenth bench setup --dry "wheat-hrs:buy=14.5,short=14.5,long=13.5,grain=Wheat - Canada Western Red Spring"`
}

func (c benchSetup) changes() bool {
	return c.Authority+c.Limit+c.Samples+c.Cold+c.Estimate != "" || c.Every >= 0 || c.Warn >= 0 ||
		len(c.Policy)+len(c.Dry)+len(c.Stop)+len(c.GoOn) > 0
}

func (c benchSetup) Run(t *terminal.Terminal) error {
	how := terminal.ReadOnly
	if c.changes() {
		how = terminal.ReadWrite
	}
	return c.WithBook(t, how, c.Who, func(p *terminal.Session) error {
		b, err := office.BenchSetup(p, p.Desk)
		if err != nil {
			return err
		}
		if c.changes() {
			if err := c.apply(&b); err != nil {
				return err
			}
			if err := scalehouse.SetBench(p, p.Desk, b); err != nil {
				return err
			}
		}
		return c.show(p, b)
	})
}

func (c benchSetup) apply(b *office.Bench) error {
	b.Authority, b.Retention = cmp.Or(c.Authority, b.Authority), cmp.Or(c.Samples, b.Retention)
	if c.Every >= 0 {
		b.EveryDays = c.Every
	}
	if c.Warn >= 0 {
		b.WarnDays = c.Warn
	}
	for _, one := range []struct {
		into *quantity.Amount
		read func() (quantity.Amount, error)
	}{
		{&b.Limit, func() (quantity.Amount, error) { return pointsIn("Limit", c.Limit) }},
		{&b.Trust.Cold, func() (quantity.Amount, error) { return temperatureIn("Cold", c.Cold) }},
		{&b.Trust.Estimate, func() (quantity.Amount, error) { return limitIn("Estimate", c.Estimate) }},
	} {
		a, err := one.read()
		if err != nil {
			return err
		}
		if a.Unit() != quantity.Plain {
			*one.into = a
		}
	}
	c.stops(b)
	if err := c.policies(b); err != nil {
		return err
	}
	return c.limits(b)
}

// stops adds codes to the list of those that stop a ticket, or removes them.
func (c benchSetup) stops(b *office.Bench) {
	off := func(code moisture.Code) bool {
		return slices.Contains(c.GoOn, string(code)) || slices.Contains(c.Stop, string(code))
	}
	b.Trust.Blocks = slices.DeleteFunc(slices.Clone(b.Trust.Blocks), off)
	for _, code := range c.Stop {
		b.Trust.Blocks = append(b.Trust.Blocks, moisture.Code(code))
	}
}

func (c benchSetup) policies(b *office.Bench) error {
	for _, text := range c.Policy {
		crop, said, err := forGrain(text, "count", "spread", "near", "near-count", "drop")
		if err != nil {
			return err
		}
		policy := moisture.PolicyFor(b.Policies, crop)
		policy.Crop = crop
		for word, into := range map[string]*int{"count": &policy.Count, "near-count": &policy.NearCount} {
			if said[word] == "" {
				continue
			}
			if *into, err = strconv.Atoi(said[word]); err != nil {
				return terminal.Refusal("Write a whole number of tests", "%q is no number of tests", said[word])
			}
		}
		policy.NearCount = max(policy.NearCount, policy.Count)
		if rules, set := said["drop"]; set {
			policy.MayExclude = dropRules(rules)
		}
		for word, into := range map[string]*quantity.Amount{"spread": &policy.Spread, "near": &policy.Near} {
			a, err := pointsIn(capital(word), said[word])
			if err != nil {
				return err
			}
			if a.Unit() != quantity.Plain {
				*into = a
			}
		}
		b.Policies = append(slices.DeleteFunc(slices.Clone(b.Policies), func(p moisture.Policy) bool { return p.Crop == crop }), policy)
	}
	return nil
}

// dropRules are the rules under which a test may be left out: "spoiled+…", or
// "none".
func dropRules(text string) []moisture.ExclusionRule {
	var out []moisture.ExclusionRule
	for _, one := range strings.Split(text, "+") {
		if one = strings.TrimSpace(one); one != "" && one != "none" {
			out = append(out, moisture.ExclusionRule(one))
		}
	}
	return out
}

// forGrain splits "corn:count=2" into the grain, empty for every one, and its settings.
func forGrain(text string, known ...string) (crop string, said map[string]string, err error) {
	name, rest, _ := strings.Cut(text, ":")
	if name = strings.TrimSpace(name); name != "every" {
		c, err := entry.Commodity(name)
		if err != nil {
			return "", nil, err
		}
		crop = c.ID
	}
	said, err = words(rest, known...)
	return crop, said, err
}

func (c benchSetup) limits(b *office.Bench) error {
	for _, text := range c.Dry {
		crop, said, err := forGrain(text, "buy", "short", "long", "aerate", "pit", "dries", "grain", "source")
		if err != nil {
			return err
		}
		if crop == "" {
			return terminal.Refusal("Write them grain by grain", "what is dry differs by grain")
		}
		r := dryness.Rules{Crop: crop, CanadaGrain: said["grain"], WetPit: said["pit"], Source: cmp.Or(said["source"], "the house")}
		_, r.Dries = said["dries"]
		for word, into := range map[string]*quantity.Amount{"buy": &r.Buy, "short": &r.StoreShort, "long": &r.StoreLong} {
			if *into, err = limitIn(capital(word), said[word]); err != nil {
				return err
			}
		}
		if r.AerateWithin, err = pointsIn("Aerate", said["aerate"]); err != nil {
			return err
		}
		b.Dry = append(slices.DeleteFunc(slices.Clone(b.Dry), func(old dryness.Rules) bool { return old.Crop == crop }), r)
	}
	return nil
}

func (c benchSetup) show(p *terminal.Session, b office.Bench) error {
	if c.JSON {
		return p.PrintJSON(b)
	}
	p.Say("Meters are checked by the rule %s%s, every %d days, %d days of warning.", b.Authority, limitWords(b), b.EveryDays, b.WarnDays)
	if keep, err := office.RetentionRule(p, p.Desk); err != nil {
		p.Say("%s.", capital(p.Printer.Error(err)))
	} else {
		p.Say("%s", keep.Stated())
	}
	p.Say("Cold is a sample under %s, an estimate a moisture over %s; the balance may be off by %s.", b.Trust.Cold, b.Trust.Estimate, b.Trust.MassWithin)
	stops := []string{string(moisture.WrongMass)}
	for _, code := range b.Trust.Blocks {
		stops = append(stops, string(code))
	}
	p.Say("A ticket is stopped by: %s.", strings.Join(stops, ", "))
	for _, policy := range append(slices.Clone(b.Policies), everyOther(b.Policies)...) {
		p.Say("%s: %s, no more than %s apart; %d within %s of a limit.", cmp.Or(policy.Crop, "every other grain"), testsWords(policy.Count), policy.Spread, policy.NearCount, policy.Near)
	}
	for _, r := range b.Dry {
		p.Say("%s", dryWords(r))
	}
	return nil
}

func limitWords(b office.Bench) string {
	if b.Authority == office.HouseRule {
		return ", " + b.Limit.String()
	}
	return ""
}

// everyOther returns the default policy, where the elevator has none for every grain.
func everyOther(policies []moisture.Policy) []moisture.Policy {
	if slices.ContainsFunc(policies, func(p moisture.Policy) bool { return p.Crop == "" }) {
		return nil
	}
	return []moisture.Policy{moisture.DefaultPolicy()}
}

func testsWords(n int) message.Text {
	if n == 1 {
		return message.New("one test")
	}
	return message.New("%d tests", n)
}

func dryWords(r dryness.Rules) message.Text {
	var dry []any
	for _, one := range []struct {
		a     quantity.Amount
		words message.Text
	}{{r.Buy, message.New("to buy")}, {r.StoreShort, message.New("to store a short time")}, {r.StoreLong, message.New("to store a long time")}} {
		if one.a.Unit() != quantity.Plain {
			dry = append(dry, message.New("%s up to %s", one.words, one.a))
		}
	}
	if r.CanadaGrain != "" {
		dry = append(dry, message.New("by class as %v", r.CanadaGrain))
	}
	return message.New("%v is dry %s (%v).", r.Crop, message.List(", ", dry...), r.Source)
}
