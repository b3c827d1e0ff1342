package entry

import (
	"slices"
	"strings"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
)

// Origin says where texts are typed, as recorded in the book beside a figure that no instrument
// produced.
type Origin struct {
	Moisture string // the method of a typed moisture
	Price    string // the source of a typed price
}

// Start holds the initial state of a form.
type Start struct {
	Book      *load.Load     // as in the book; nil for a load not written yet
	Direction load.Direction // of a load that is not in the book; none is inbound
	Origin    Origin
	Scale     string           // id of the scale in use; none is the first
	Drafts    []string         // drafts asked for beyond those weighed; "" is the truck's own
	Factors   []grain.FactorID // results asked for beyond the usual ones
	DriverOn  string           // whether the driver is on the truck: "on", "off" or ""
	// Past marks a load from before the book: it was weighed on no scale of this elevator, tested
	// by nobody here, and its contract may be on no list.
	Past bool
	// Reason returns why the weight in a field is typed by hand; nil means no reasons.
	Reason func(field string) string
}

func (s Start) reason(field string) string {
	if s.Reason == nil {
		return ""
	}
	return s.Reason(field)
}

// Form is a load while it is entered: texts by field over the load as the book has
// it. It writes nothing.
type Form struct {
	house House
	start Start
	texts map[string]string
	order []string // fields as they were set
	now   *draft   // the parsed texts; nil after a change
}

// New makes a form without texts.
func New(h House, s Start) *Form {
	return &Form{house: h, start: s, texts: map[string]string{}}
}

// Set replaces the text of a field. An empty text removes the load's value.
func (f *Form) Set(field, text string) {
	if _, typed := f.texts[field]; !typed {
		f.order = append(f.order, field)
	}
	f.texts[field], f.now = strings.TrimSpace(text), nil
}

// FieldCalled returns the id of the field that a text names: a factor of the load's grain may be
// called by its name or its abbreviation. Other texts are returned unchanged.
func FieldCalled(f *Form, text string) string {
	c, err := grain.ByID(f.Commodity())
	if err != nil {
		return text
	}
	if factor, known := c.FactorCalled(text); known {
		return string(factor.ID)
	}
	return text
}

// Book returns the load as in the book, or a blank one.
func (f *Form) book() *load.Load {
	if f.start.Book == nil {
		return &load.Load{}
	}
	return f.start.Book
}

// draft collects the changes the texts make to the load.
type draft struct {
	house  House
	origin Origin
	who    string

	details          load.Details
	sample           load.Sample
	weighed          []load.Weighing
	accepted         []load.Accepted
	answered         []Answer
	amended, sampled bool
	scale            string

	fields  []Field
	refused map[string]error
	good    []string // fields with valid texts
}

// day is the load's day, or today where it has none.
func (d *draft) day() quantity.Date {
	if d.details.Day.IsZero() {
		return d.house.Today()
	}
	return d.details.Day
}

// rates are those of the load's grain on its day, whichever way it moves.
func (d *draft) rates() (*rates.Edition, error) {
	details := d.details
	details.Day = d.day()
	return EditionOf(d.house.Profile(), d.house.Rates(), details)
}

// read reads every text, part by part: which results and price are possible depends on the details.
func (f *Form) read() *draft {
	if f.now != nil {
		return f.now
	}
	d := f.begin()
	who := f.readAll(d, whoFields(d.details.Direction == load.Outbound))
	weights := f.readAll(d, slices.Concat([]Field{f.scaleField()}, f.weightFields(load.Gross), f.weightFields(load.Tare)))
	sample := f.readAll(d, f.sampleFields(d))
	terms := f.readAll(d, f.termsFields(d.details.Direction == load.Outbound))
	f.readRest(d)
	gross := len(f.Drafts()) + 1
	d.fields = slices.Concat(who, weights[:gross], sample, weights[gross:], terms)
	f.now = d
	return d
}

// begin is the draft before anything is read, with the way the grain moves.
func (f *Form) begin() *draft {
	book := f.book()
	d := &draft{
		house: f.house, origin: f.start.Origin, who: f.house.Stamp().Who,
		details: book.Details, sample: book.Sample, refused: map[string]error{},
	}
	if f.start.Book == nil {
		d.details.Direction = f.start.Direction
		if d.details.Direction == "" {
			d.details.Direction = load.Inbound
		}
	}
	if f.start.Past {
		d.who = ""
	}
	f.readAll(d, []Field{directionField})
	return d
}

// directionField turns a load round: in or out.
var directionField = detail(Field{ID: "direction", Label: "Direction", Kind: Words, Part: WhoPart, Seldom: true}, func(d *draft, text string) error {
	switch way := load.Direction(text); way {
	case load.Inbound, load.Outbound:
		d.details.Direction = way
		return nil
	}
	return message.Invalid.Errorf("a load is inbound or outbound, not %q", text)
})

func (f *Form) readAll(d *draft, fields []Field) []Field {
	signs := Signs(f.house.Profile())
	for i := range fields {
		fields[i].signs = signs
	}
	for _, field := range fields {
		text, typed := f.texts[field.ID]
		if !typed {
			continue
		}
		plain, err := field.plain(text)
		if err == nil {
			err = field.read(d, plain)
		}
		if err != nil {
			d.refused[field.ID] = err
			continue
		}
		d.good = append(d.good, field.ID)
	}
	return fields
}

// AcceptField is the field whose text is the reason to settle beyond a limit.
func AcceptField(limit string) string { return acceptPrefix + limit }

// AnswerField is the id of the answer to a question of a guard.
func AnswerField(guard string) string { return answerPrefix + guard }

const (
	acceptPrefix = "accept."
	answerPrefix = "answer."
)

// readRest reads acceptances, and refuses texts for unknown fields.
func (f *Form) readRest(d *draft) {
	for _, id := range f.order {
		limit, isAcceptance := strings.CutPrefix(id, acceptPrefix)
		asked, isAnswer := strings.CutPrefix(id, answerPrefix)
		_, refused := d.refused[id]
		switch {
		case isAcceptance:
			d.accepted = append(d.accepted, load.Accepted{Limit: limit, Reason: f.texts[id]})
			d.good = append(d.good, id)
		case isAnswer:
			d.answered = append(d.answered, Answer{asked, f.texts[id]})
			d.good = append(d.good, id)
		case !refused && !slices.Contains(d.good, id):
			d.refused[id] = f.noField(d, id)
		}
	}
}

// noField says why a load has no such field.
func (f *Form) noField(d *draft, id string) error {
	c, err := grain.ByID(d.details.Commodity)
	if err != nil {
		return message.Incomplete.Errorf("No commodity yet: say what grain it is.")
	}
	_, err = FactorOf(c, c, id)
	return err
}

// Fields are the fields in working order.
func (f *Form) Fields() []Field { return f.read().fields }

// Field finds a field by its id.
func (f *Form) Field(id string) (Field, bool) {
	all := f.Fields()
	if i := slices.IndexFunc(all, func(one Field) bool { return one.ID == id }); i >= 0 {
		return all[i], true
	}
	return Field{}, false
}

// Commodity is the grain as typed, or as the book has it; it decides which fields
// there are.
func (f *Form) Commodity() string { return f.read().details.Commodity }

// PriceUnit is money per the unit that the load's rates settle in, and per bushel
// while they are not known.
func (f *Form) PriceUnit() quantity.Unit {
	if e, err := f.read().rates(); err == nil && e != nil {
		return quantity.Dollar.Per(e.Units.Settle)
	}
	return quantity.DollarsPerBu
}

// ErrPriceOfWhat is why a price cannot be read before the commodity is known.
var ErrPriceOfWhat = message.Incomplete.Errorf("The price is per bushel, hundredweight or tonne, as the rates of the commodity settle. Say what grain it is first")
