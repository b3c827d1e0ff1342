package entry

import (
	"slices"
	"strings"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
	"tenthpoint/internal/textsearch"
)

// List is one of the lists that a text is looked up in.
type List string

// The lists.
const (
	GrowerList    List = "grower"
	CommodityList List = "commodity"
	TruckList     List = "truck"
	BinList       List = "bin"
	ContractList  List = "contract"
	ScaleList     List = "scale"
)

// Unknown is a text that matches nothing on a list. Known are the existing codes, where they are
// few, and Near those most like the text, each by its code and name.
type Unknown struct {
	List        List
	Text        string
	Known, Near []string
}

// Error says what to do about it.
func (e Unknown) Error() string { return e.Message().String() }

// Unwrap gives its kind.
func (e Unknown) Unwrap() error { return message.NotFound }

// Message says what to do about it.
func (e Unknown) Message() message.Text {
	switch e.List {
	case GrowerList:
		return message.New("No grower has the code or name %q. Write the grower down first, under New grower", e.Text)
	case BinList:
		return message.New("There is no pit or bin %q here. Choose one of these: %s", e.Text, message.Names(", ", e.Known))
	case ContractList:
		return message.New("There is no contract %q. Choose sold, stored, or one of the grower's contracts", e.Text)
	case CommodityList:
		return message.New("%q is not taken here. Choose one of the list, or add it in the set-up", e.Text)
	case ScaleList:
		return message.New("there is no scale %v at this elevator. Name one that is set up, or add it in the set-up", e.Text)
	}
	return message.New("there is no %s %q here", e.List, e.Text)
}

// NoCommodity is a text that names no known grain. Known are the grains to choose from, Near those
// most like the text.
type NoCommodity struct {
	Text        string
	Known, Near []string
}

// Error says what to do about it.
func (e NoCommodity) Error() string { return e.Message().String() }

// Unwrap gives its kind.
func (e NoCommodity) Unwrap() error { return message.NotFound }

// Message says what to do about it.
func (e NoCommodity) Message() message.Text {
	if len(e.Near) > 0 {
		return message.New("%q is not a commodity here. Did you mean %s?", e.Text, message.Names(", ", e.Near))
	}
	return message.New("%q is not a commodity here. Choose one of these: %s", e.Text, message.Names(", ", e.Known))
}

// Ambiguous is a text that may name several things on a list. Like are the first
// of them, each by its code and name.
type Ambiguous struct {
	List List
	Text string
	Like []string
}

// Error names the candidates.
func (e Ambiguous) Error() string { return e.Message().String() }

// Message names the candidates.
func (e Ambiguous) Message() message.Text {
	return message.New("%q may be several. Type the code of one: %s", e.Text, message.Names(", ", e.Like))
}

// mostCandidates is the largest number of candidates an error lists.
const mostCandidates = 6

// keys are the search keys of a list item: its code, its other names in full, and the name, which
// may be matched in part.
type keys struct {
	code  string
	names []string
	part  string
}

// look finds the one thing on a list that a text names: by its code, by a name in
// full, or by a part of one name only. Letters count alike in either case and with
// or without accents; a code typed letter for letter comes first.
func look[T any](list List, text string, all []T, keysOf func(T) keys) (T, error) {
	text = strings.TrimSpace(text)
	var none T
	if text == "" {
		return none, Unknown{List: list, Text: text}
	}
	for _, fits := range []func(keys) bool{
		func(k keys) bool { return k.code == text },
		func(k keys) bool { return textsearch.Equal(k.code, text) },
		func(k keys) bool { return isCalled(k, text) },
		func(k keys) bool { return k.part != "" && textsearch.Contains(k.part, text) },
	} {
		var like []T
		for _, one := range all {
			if fits(keysOf(one)) {
				like = append(like, one)
			}
		}
		switch len(like) {
		case 0:
		case 1:
			return like[0], nil
		default:
			return none, Ambiguous{List: list, Text: text, Like: candidates(like, keysOf)}
		}
	}
	return none, Unknown{List: list, Text: text, Near: nearest(text, all, keysOf)}
}

// nearest returns the items whose code, name or one word of it is most like a text.
func nearest[T any](text string, all []T, keysOf func(T) keys) []string {
	var words []string
	of := map[string][]T{}
	for _, one := range all {
		k := keysOf(one)
		for _, word := range append(append([]string{k.code}, k.names...), strings.Fields(k.part)...) {
			if len(of[word]) == 0 {
				words = append(words, word)
			}
			of[word] = append(of[word], one)
		}
	}
	var near []string
	for _, word := range textsearch.Nearest(text, words) {
		for _, name := range candidates(of[word], keysOf) {
			if !slices.Contains(near, name) {
				near = append(near, name)
			}
		}
	}
	return near[:min(len(near), mostCandidates)]
}

func isCalled(k keys, text string) bool {
	for _, name := range k.names {
		if name != "" && textsearch.Equal(name, text) {
			return true
		}
	}
	return false
}

func candidates[T any](like []T, keysOf func(T) keys) []string {
	var out []string
	for _, one := range like[:min(len(like), mostCandidates)] {
		k := keysOf(one)
		name := strings.TrimSpace(k.code + " " + k.names[0])
		if strings.EqualFold(k.code, k.names[0]) {
			name = k.code
		}
		out = append(out, name)
	}
	return out
}

// Grower finds a grower by code, name, or the part of one name only; also by the code and name of a
// card it has taken over, and a name it had before.
func Grower(in Lists, text string) (elevator.Grower, error) {
	all, err := in.Growers()
	if err != nil {
		return elevator.Grower{}, err
	}
	c, err := look(GrowerList, text, elevator.Cards(all), func(c elevator.Card) keys {
		return keys{c.ID, slices.Concat([]string{c.Name}, c.Codes[1:], c.Names), c.Name}
	})
	return c.Grower, err
}

// Truck finds a truck by its number or plate. Known is false for one that has not
// been here, which is no error.
func Truck(in Lists, text string) (t elevator.Truck, known bool, err error) {
	all, err := in.Trucks()
	if err != nil {
		return t, false, err
	}
	t, err = look(TruckList, text, all, func(t elevator.Truck) keys { return keys{t.ID, []string{t.Plate}, ""} })
	if _, unseen := err.(Unknown); unseen {
		return t, false, nil
	}
	return t, err == nil, err
}

// Bin finds a pit or bin by its short name or its name. Where none are set up any
// word will do.
func Bin(in Lists, text string) (string, error) {
	all, err := in.Bins()
	if err != nil || len(all) == 0 {
		return strings.TrimSpace(text), err
	}
	b, err := look(BinList, text, all, func(b elevator.Bin) keys { return keys{b.ID, []string{b.Name}, ""} })
	if unknown, is := err.(Unknown); is {
		for _, b := range all {
			unknown.Known = append(unknown.Known, b.ID)
		}
		return "", unknown
	}
	return b.ID, err
}

// Contract finds a contract by its number.
func Contract(in Lists, text string) (elevator.ContractTerms, error) {
	all, err := in.Contracts()
	if err != nil {
		return elevator.ContractTerms{}, err
	}
	return look(ContractList, text, all, func(c elevator.ContractTerms) keys { return keys{c.Number, []string{""}, ""} })
}

// Commodity finds any known grain by its id, its name, or a part that is in one name only.
func Commodity(text string) (grain.Commodity, error) {
	if c, err := grain.ByID(text); err == nil {
		return c, nil
	}
	return commodityOf(grain.All(), text)
}

// commodityOf finds one of several grains; the error names those most like the text.
func commodityOf(all []grain.Commodity, text string) (grain.Commodity, error) {
	c, err := look(CommodityList, text, all, func(c grain.Commodity) keys { return keys{c.ID, []string{c.Name}, c.Name} })
	unknown, is := err.(Unknown)
	if !is {
		return c, err
	}
	none := NoCommodity{Text: unknown.Text, Near: unknown.Near}
	for _, c := range all {
		none.Known = append(none.Known, c.ID)
	}
	return c, none
}

// CommodityHere finds a grain as [Commodity] does, those taken here before others
// with a like name.
func CommodityHere(p elevator.Profile, text string) (grain.Commodity, error) {
	var taken []grain.Commodity
	for _, c := range grain.All() {
		if _, here := p.Schedule(c.ID); here {
			taken = append(taken, c)
		}
	}
	c, err := commodityOf(taken, text)
	none, unknown := err.(NoCommodity)
	if !unknown {
		return c, err
	}
	c, err = Commodity(text)
	if _, unknown := err.(NoCommodity); unknown && len(taken) > 0 {
		return c, none
	}
	return c, err
}
