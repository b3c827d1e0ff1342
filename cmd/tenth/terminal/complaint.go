package terminal

import (
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/guard"
	"tenthpoint/internal/message"
	"tenthpoint/internal/tomlfile"
)

// Complaint is an error and what to do about it, in English.
type Complaint struct {
	What, Hint string

	what, hint message.Text // the same, to be translated
}

// In is a complaint in a language. What is known only as one sentence stays one.
func (c Complaint) In(p *message.Printer) Complaint {
	switch {
	case p == nil:
		return c
	case c.what.IsZero():
		return Complaint{What: p.Word(c.What), Hint: p.Word(c.Hint)}
	}
	return Complaint{What: p.Text(c.what), Hint: p.Text(c.hint), what: c.what, hint: c.hint}
}

// sentence is what is wrong as a sentence; a name at its beginning, such as a file's, keeps its
// small letter.
func (c Complaint) sentence() string {
	verb, more, _ := strings.Cut(c.what.Key(), " ")
	if args := c.what.Args(); len(args) > 0 && (verb == "%s" || verb == "%v") && more != "" {
		if name, is := args[0].(string); is && !strings.Contains(name, " ") {
			return stopped(c.What)
		}
	}
	return Sentence(c.What)
}

// At puts a place before a complaint.
func (c Complaint) At(where message.Text) Complaint {
	what, hint := c.what, c.hint
	if what.IsZero() {
		what, hint = message.Words(c.What), message.Words(c.Hint)
	}
	return Complaint{
		What: where.String() + ": " + c.What, Hint: c.Hint,
		what: message.New("%s: %s", where, what), hint: hint,
	}
}

// Error is both as one text.
func (c Complaint) Error() string {
	if c.Hint == "" {
		return c.What
	}
	return c.What + ". " + c.Hint
}

// Refusal makes a complaint.
func Refusal(hint, what string, args ...any) error {
	if false {
		_ = fmt.Sprintf(what, args...) // never done: it lets go vet check every call
	}
	return complaint(message.New(what, args...), message.Words(hint))
}

// Problem is a complaint that says nothing of what to do.
func Problem(what message.Text) Complaint { return complaint(what, message.Text{}) }

// Advised is a complaint whose advice has arguments.
func Advised(what, hint message.Text) Complaint { return complaint(what, hint) }

func complaint(what, hint message.Text) Complaint {
	return Complaint{What: what.String(), Hint: hint.String(), what: what, hint: hint}
}

// Complain writes every complaint of an error as "error:" and "hint:", in a
// language.
func Complain(w io.Writer, in *message.Printer, err error) {
	for _, c := range Complaints(err) {
		c = c.In(in)
		fmt.Fprintln(w, in.Word("error:"), shortened(c.sentence()))
		if c.Hint != "" {
			fmt.Fprintln(w, in.Word("hint:"), shortened(Sentence(c.Hint)))
		}
	}
}

// Complaints are the complaints of an error, one for each of several joined, with the advice that its
// message ends with.
func Complaints(err error) []Complaint {
	var out []Complaint
	switch e := err.(type) {
	case Complaint:
		return []Complaint{e}
	case entry.Fault:
		return Complaints(e.Err)
	case entry.Unknown:
		return []Complaint{notOnTheList(e)}
	case entry.NoCommodity:
		return []Complaint{complaint(message.New("%q is not a commodity here", shortened(e.Text)), meant(e.Near, e.Known))}
	case entry.Ambiguous:
		return []Complaint{complaint(message.New("%q may be several %s", e.Text, message.Words(plural[e.List])), message.New("Type the code of one: %s", message.Names(", ", e.Like)))}
	case entry.NotTested:
		return []Complaint{complaint(message.New("%s is not tested for %q", e.Commodity, e.Factor), didYouMean(e.Factor, e.Known, message.New("Factors of %s: %s", e.Commodity, message.Names(", ", withShortNames(e.Known)))))}
	case entry.NoStoredTare:
		return []Complaint{complaint(message.New("truck %q has no stored tare", e.Truck), message.Words("Weigh it empty and give --tare"))}
	case guard.Asked:
		return questions(e)
	case tomlfile.Problems:
		return inFile(e)
	case interface{ Unwrap() []error }:
		for _, one := range e.Unwrap() {
			out = append(out, Complaints(one)...)
		}
		return out
	}
	for _, line := range message.Lines(err) {
		out = append(out, complaint(line.Advice()))
	}
	return out
}

// questions are the questions of the guards about a load, each with the flag that answers it.
func questions(asked guard.Asked) []Complaint {
	var out []Complaint
	for _, f := range asked {
		reasons := make([]any, len(f.Reasons))
		for i, r := range f.Reasons {
			reasons[i] = message.Words(r)
		}
		hint := message.New("Look again, or answer with --confirm %v=REASON, one of: %s", f.ID, message.List("; ", reasons...))
		if f.Act == elevator.GuardManager {
			hint = message.New("Look again, or let a manager answer with --confirm %v=REASON, one of: %s", f.ID, message.List("; ", reasons...))
		}
		out = append(out, complaint(f.Said, hint))
	}
	return out
}

var plural = map[entry.List]string{
	entry.GrowerList: "growers", entry.CommodityList: "commodities", entry.TruckList: "trucks", entry.BinList: "pits or bins", entry.ContractList: "contracts",
}

// notOnTheList advises what to do about a text that matches nothing.
func notOnTheList(e entry.Unknown) Complaint {
	switch e.List {
	case entry.GrowerList:
		if len(e.Near) > 0 {
			return complaint(message.New("there is no grower %q here", e.Text), meant(e.Near, nil))
		}
		return complaint(message.New("there is no grower %q here", e.Text), message.Words("Look with \"tenth grower list\", or add with \"tenth grower add CODE NAME\""))
	case entry.BinList:
		return complaint(message.New("there is no pit or bin %q", e.Text), meant(e.Near, e.Known))
	case entry.ContractList:
		return complaint(message.New("there is no contract %q here", e.Text), meant(e.Near, nil))
	case entry.CommodityList:
		c, err := entry.Commodity(e.Text)
		if err != nil {
			return complaint(message.New("%q is not a commodity here", shortened(e.Text)), meant(e.Near, e.Known))
		}
		return complaint(message.New("%s is not taken here", message.Words(c.Name)), message.New("A manager adds it with \"tenth setup --grain %v=SCHEDULE\".", c.ID))
	}
	return complaint(message.Of(e).Advice())
}

// withShortNames adds to ids of factors the short names that testers write.
func withShortNames(ids []string) []string {
	out := slices.Clone(ids)
	for i, id := range ids {
		if short := grain.ShortName(grain.FactorID(id)); short != "" {
			out[i] = id + " (" + short + ")"
		}
	}
	return out
}

// meant suggests the items most like the text typed, or all of them, or the command that lists
// them.
func meant(near, known []string) message.Text {
	switch {
	case len(near) > 0:
		return message.New("Did you mean %s?", message.Names(", ", near))
	case len(known) > 0:
		return message.New("Known here: %s", message.Names(", ", known))
	}
	return message.Words("Look with \"tenth contract list\", or add one with \"tenth contract add\"")
}

// inFile converts mistakes in a file, each with its line.
func inFile(mistakes tomlfile.Problems) []Complaint {
	var out []Complaint
	for _, p := range mistakes {
		what := message.List("\n    ", message.New("%v: %s", p.Place(), message.Stopped(p.What)), message.Own(p.Excerpt))
		out = append(out, complaint(what, p.Remedy))
	}
	return out
}

// Sentence adds an initial capital and a final full stop. A name at the beginning, such as a
// file's, stays unchanged.
func Sentence(text string) string {
	if text = strings.TrimSpace(text); text == "" {
		return ""
	}
	first, size := utf8.DecodeRuneInString(text)
	word, _, _ := strings.Cut(text, " ")
	if !strings.ContainsAny(strings.TrimSuffix(word, ":"), "./:\\_") {
		text = string(unicode.ToUpper(first)) + text[size:]
	}
	if strings.Contains(text, "\n") {
		return text // it ends with a line of a file
	}
	return stopped(text)
}

// stopped ends with a full stop.
func stopped(text string) string {
	if strings.ContainsAny(text[max(len(text)-1, 0):], ".?!:") {
		return text
	}
	return text + "."
}
