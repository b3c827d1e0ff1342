// Package house holds the commands for an elevator's master data: its set-up, growers, trucks,
// people and bins.
package house

import (
	"cmp"
	"errors"
	"io/fs"
	"os"
	"slices"
	"strings"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/deadline"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/law"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/title"
)

// Setup sets the elevator up, or prints its set-up.
type Setup struct {
	terminal.BookFlags
	terminal.WhoFlags
	Business    string   `help:"Business name." placeholder:"NAME"`
	Street      string   `help:"Street address." placeholder:"WORDS"`
	Town        string   `help:"Town." placeholder:"WORDS"`
	Phone       string   `help:"Telephone." placeholder:"NUMBER"`
	Licence     string   `help:"Warehouse licence or weighmaster number." placeholder:"NUMBER"`
	Rules       string   `help:"Rule set." placeholder:"us|canada"`
	Place       string   `help:"State or province whose law on tickets is followed, of those that were read; \"none\" for none." placeholder:"PLACE"`
	GrainAct    string   `help:"Whether the elevator is licensed under the Canada Grain Act, whose rules on shrink and handling then bind its rates." enum:",yes,no" default:"" placeholder:"yes|no"`
	Scale       []string `help:"A scale: its name, division and capacity; may be repeated." placeholder:"1=20lb,120000lb" sep:"none"`
	Grain       []string `sep:"none" help:"A grain taken, and its schedule of rates; may be repeated." placeholder:"corn=main"`
	Retain      int      `help:"Days that samples are kept." placeholder:"DAYS"`
	Dispute     int      `name:"dispute-days" help:"Posted days from delivery in which another test may be asked for; without them, the days samples are kept." placeholder:"DAYS"`
	Wait        int      `name:"wait-minutes" help:"Minutes after which a truck on the yard is pointed at; without them, 45." placeholder:"MINUTES"`
	CopyFor     []string `sep:"none" help:"For whom a ticket prints a copy, named on it; may be repeated. \"nobody\" is one copy without a name." placeholder:"driver"`
	DriverMoney string   `help:"Whether the driver's copy and its square say what is paid." enum:",yes,no" default:"" placeholder:"yes|no"`
	AskPIN      []string `name:"ask-pin" sep:"none" help:"What asks for a PIN beside managers' acts; may be repeated. \"nothing\" for nothing." placeholder:"weights|tickets|samples|lists"`
	Weigher     string   `help:"Who signs when nobody says who acts." placeholder:"NAME"`
	Language    string   `help:"Language of screens and papers." placeholder:"en|es|fr"`
	Dates       string   `help:"How days are written on slips and screens." enum:",iso,local" default:"" placeholder:"iso|local"`
	Fills       string   `help:"Which contract takes what another has no room for: the one that ends first, the one written down first, or the dearest." enum:",until,number,price" default:"" placeholder:"until|number|price"`
	Letters     string   `help:"Letters of this site before the numbers of its tickets, as at the head office; \"none\" for none." placeholder:"LETTERS"`
	CropYear    []string `sep:"none" help:"The day on which the crop year of a grain begins; may be repeated. Loads are then of that year where nobody says another." placeholder:"corn=09-01"`
	JSON        bool     `help:"Print for programs: every figure as text."`
}

func (Setup) Help() string {
	return `Without flags the set-up is shown. With flags it is changed, a manager's act; a book that is not there yet is made, and whoever sets it up becomes its first manager.

    tenth setup --book my.book --who "Mae Orton" --business "Our Elevator" --street "1 Siding Road" \
        --town "Nowhere" --phone 555-0100 --scale 1=20lb,120000lb --grain corn=main --grain soybeans=main
    tenth setup --book my.book

Use "tenth demo" for the set-up of an invented elevator.`
}

func (c Setup) Run(t *terminal.Terminal) error {
	if !c.changes() {
		return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error { return c.show(p) })
	}
	path, err := c.BookPath()
	if err != nil {
		return err
	}
	_, absent := os.Stat(path)
	err = c.WithBook(t, terminal.CreateNew, c.Who, func(p *terminal.Session) error {
		profile, err := c.profile(p.Profile(), p.Desk.Laws())
		if err != nil {
			return err
		}
		if err := c.write(p, profile); err != nil {
			return err
		}
		return c.show(p)
	})
	if err != nil && errors.Is(absent, fs.ErrNotExist) {
		return errors.Join(err, discard(path)) // no book was begun
	}
	if err == nil {
		terminal.MakeComputerKey(t)
	}
	return err
}

// discard removes a file that may not be there.
func discard(path string) error {
	if err := os.Remove(path); err != nil && !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	return nil
}

func (c Setup) changes() bool {
	return c.Business+c.Street+c.Town+c.Phone+c.Licence+c.Rules+c.Weigher+c.Language+c.Dates+c.GrainAct+c.Place+c.Fills+c.DriverMoney+c.Letters != "" || len(c.CropYear) > 0 || len(c.Scale)+len(c.Grain)+len(c.CopyFor)+len(c.AskPIN)+c.Retain+c.Dispute+c.Wait > 0
}

// write stores the profile, and in a new book its first manager.
func (c Setup) write(p *terminal.Session, profile elevator.Profile) error {
	isNew := len(p.People()) == 0
	if isNew {
		profile.Weigher = cmp.Or(profile.Weigher, p.Who().Name) // who signs when nobody is named
	}
	if err := scalehouse.SetProfile(p, p.Desk, profile); err != nil {
		return err
	}
	if !isNew {
		return nil
	}
	return scalehouse.SetPerson(p, p.Desk, elevator.Person{Name: p.Who().Name, Role: elevator.Manager})
}

// profile returns the set-up with the typed values applied.
func (c Setup) profile(p elevator.Profile, laws *law.Set) (elevator.Profile, error) {
	for _, one := range []struct {
		typed string
		cell  *string
	}{{c.Business, &p.Business}, {c.Street, &p.Street}, {c.Town, &p.Town}, {c.Phone, &p.Phone}, {c.Licence, &p.Licence}, {c.Rules, &p.Rules}, {c.Weigher, &p.Weigher}, {c.Language, &p.Language}, {c.Dates, &p.Dates}, {c.Fills, &p.FillOrder}} {
		if one.typed != "" {
			*one.cell = one.typed
		}
	}
	p.Rules = cmp.Or(p.Rules, "us")
	if p.Rules != "us" && p.Rules != "canada" {
		return p, terminal.Refusal("Give --rules us or --rules canada", "%q is no rule set", p.Rules)
	}
	if err := c.place(&p, laws); err != nil {
		return p, err
	}
	if c.GrainAct != "" {
		p.Unlicensed = c.GrainAct == "no"
	}
	if c.DriverMoney != "" {
		p.DriverMoney = c.DriverMoney == "yes"
	}
	if _, err := terminal.Language(p.Language); err != nil {
		return p, err
	}
	if c.Retain > 0 {
		p.RetainDays = c.Retain
	}
	if c.Dispute > 0 {
		p.DisputeDays = c.Dispute
	}
	if c.Wait > 0 {
		p.WaitMinutes = c.Wait
	}
	if len(c.CopyFor) > 0 {
		p.CopiesFor = copiesFor(c.CopyFor)
	}
	if len(c.AskPIN) > 0 {
		p.AskPIN = askPIN(c.AskPIN)
	}
	if p.RetainDays == 0 {
		p.RetainDays = elevator.UsualRetainDays(p.Rules)
	}
	if c.Letters != "" {
		p.Letters = strings.ReplaceAll(c.Letters, "none", "")
	}
	if len(c.CropYear) > 0 {
		var err error
		if p.CropStarts, err = entry.ParseCropStarts(strings.Join(c.CropYear, ";")); err != nil {
			return p, err
		}
	}
	if err := c.scales(&p); err != nil {
		return p, err
	}
	return p, c.grains(&p)
}

// showPlace says what the law of the elevator's place asks for.
func (c Setup) showPlace(p *terminal.Session) error {
	rules, err := title.RulesIn(p.Desk.Laws().On(p.Today()))
	if err != nil {
		return err
	}
	p.Say("Place: %v. Under a ticket: %v", p.Profile().Place, terminal.Or(rules.Words, message.New("no words of law")))
	if rules.Undecided != "" {
		p.Say("Undecided grain: %s", rules.Said())
	}
	deadlines, err := deadline.RulesIn(p.Desk.Laws().On(p.Today()))
	for _, d := range deadlines {
		p.Say("Due days: %s", d.Said())
	}
	return err
}

// place sets the place whose law on tickets is followed.
func (c Setup) place(p *elevator.Profile, laws *law.Set) error {
	switch place := strings.ToLower(strings.TrimSpace(c.Place)); {
	case place == "":
	case place == "none":
		p.Place = ""
	case slices.Contains(laws.Places(), place):
		p.Place = place
	default:
		return terminal.Refusal("Choose one of these, or write a file of law for it: "+strings.Join(laws.Places(), ", "), "the law on tickets of %q was not read", place)
	}
	return nil
}

// copiesFor returns the list as stored; "nobody" empties it.
func copiesFor(typed []string) (list []string) {
	for _, name := range typed {
		if name = strings.TrimSpace(name); name != "" && name != "nobody" {
			list = append(list, name)
		}
	}
	return list
}

func (c Setup) scales(p *elevator.Profile) error {
	if len(c.Scale) == 0 {
		return nil
	}
	p.Scales = nil
	for _, text := range c.Scale {
		name, plate, named := strings.Cut(text, "=")
		division, capacity, both := strings.Cut(plate, ",")
		if !named || !both {
			return terminal.Refusal("Write it like 1=20lb,120000lb", "%q is no scale with its division and capacity", text)
		}
		d, err := entry.ParsePlate("The division of scale "+name, division, quantity.Lb)
		if err != nil {
			return err
		}
		most, err := entry.ParsePlate("The capacity of scale "+name, capacity, d.Unit())
		if err != nil {
			return err
		}
		p.Scales = append(p.Scales, elevator.Scale{ID: name, Division: d, Capacity: most})
	}
	return nil
}

func (c Setup) grains(p *elevator.Profile) error {
	if len(c.Grain) == 0 {
		return nil
	}
	p.Grains = nil
	for _, text := range c.Grain {
		name, schedule, named := strings.Cut(text, "=")
		if !named {
			schedule = "main"
		}
		grain, err := entry.Commodity(name)
		if err != nil {
			return err
		}
		p.Grains = append(p.Grains, elevator.GrainRule{Commodity: grain.ID, Schedule: schedule})
	}
	return nil
}

func (c Setup) show(p *terminal.Session) error {
	profile := p.Profile()
	if c.JSON {
		return p.PrintJSON(profile)
	}
	if profile.Business == "" {
		return terminal.Refusal("Type \"tenth setup --help\" for an example", "the elevator in %s is not set up yet", p.File.Path())
	}
	p.Say("%s, %s, %s, telephone %s", profile.Business, profile.Street, profile.Town, profile.Phone)
	if profile.Demo {
		p.Say("An invented elevator: example - not for trade.")
	}
	if profile.Licence != "" {
		p.Say("Licence: %s", profile.Licence)
	}
	for _, s := range profile.Scales {
		p.Say("Scale %s: divisions of %s, capacity %s", s.ID, s.Division, s.Capacity)
	}
	for _, g := range profile.Grains {
		p.Say("Takes %s under schedule %q", g.Commodity, g.Schedule)
	}
	if profile.Letters != "" {
		p.Say("Letters before the numbers of tickets: %s", profile.Letters)
	}
	for _, c := range profile.CropStarts {
		p.Say("The crop year of %s begins on %s; today it is %s.", c.Commodity, c.From, profile.CropYear(c.Commodity, p.Today()))
	}
	if profile.Place != "" {
		if err := c.showPlace(p); err != nil {
			return err
		}
	}
	keep, err := office.RetentionRule(p, p.Desk)
	if err != nil {
		return err
	}
	p.Say("Rules: %s. Samples are kept %d days.", profile.Rules, profile.RetainDays)
	if keep.Days != profile.RetainDays {
		p.Say("The rule for samples that is in use keeps them %d days.", keep.Days)
		p.Say("%s", message.New(law.Confirm))
	}
	if profile.WaitMinutes > 0 {
		p.Say("A truck on the yard is pointed at after %d minutes.", profile.WaitMinutes)
	}
	if profile.Rules == "canada" {
		p.Say("%s", licence(profile))
	}
	if len(profile.CopiesFor) > 0 {
		p.Say("A ticket prints a copy for each of: %s", strings.Join(profile.CopiesFor, ", "))
	}
	if profile.DriverMoney {
		p.Say("The driver's copy and its square say what is paid.")
	}
	if len(profile.AskPIN) > 0 {
		p.Say("A PIN is asked for: %s", pinActs(profile))
	}
	if profile.Language != "" {
		p.Say("Language of screens and papers: %s", profile.Language)
	}
	for _, person := range p.People() {
		p.Say("At the desk: %s, %s", person.Name, person.Role)
	}
	return nil
}

// askPIN are the acts that ask for a PIN, as typed; "nothing" is none.
func askPIN(typed []string) (acts []elevator.PINAct) {
	for _, act := range typed {
		if act != "nothing" {
			acts = append(acts, elevator.PINAct(act))
		}
	}
	return acts
}

// pinActs are the acts that ask for a PIN, in words.
func pinActs(p elevator.Profile) message.Text {
	words := make([]any, len(p.AskPIN))
	for i, act := range p.AskPIN {
		words[i] = act
	}
	return message.List(", ", words...)
}

// licence says whether the rates are bound by the Canada Grain Act.
func licence(profile elevator.Profile) message.Text {
	if profile.UnderGrainAct() {
		return message.New("Licensed under the Canada Grain Act: rates that take handling, or shrink by more than the formula on the weight delivered, are not used.")
	}
	return message.New("Not licensed under the Canada Grain Act: its rules on shrink and handling are not asked of the rates.")
}
