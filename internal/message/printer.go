package message

import (
	"fmt"
	"slices"
	"strings"
	"sync"
	"unicode"
)

// Printer translates messages to a language. A nil Printer leaves them in English. It is safe for
// concurrent use.
type Printer struct {
	catalog *Catalog

	mutex   sync.Mutex
	missing map[string]int
}

// NewPrinter makes a printer for a catalog.
func NewPrinter(c *Catalog) *Printer {
	return &Printer{catalog: c, missing: map[string]int{}}
}

// Code is the language by ISO 639.
func (p *Printer) Code() string {
	if p == nil {
		return "en"
	}
	return p.catalog.Code
}

// Figures are the signs of numbers.
func (p *Printer) Figures() Figures {
	if p == nil {
		return Figures{}
	}
	return p.catalog.Figures
}

// Say is a format with its arguments in the language, as [New] makes it.
func (p *Printer) Say(english string, args ...any) string { return p.Text(New(english, args...)) }

// AsShown returns arguments for [Printer.Say] whose strings are names or already translated;
// figures among them get the format of the language.
func (p *Printer) AsShown(args []any) []any {
	out := slices.Clone(args)
	for i, arg := range out {
		if text, is := arg.(string); is {
			out[i] = Own(p.Figures().Write(text))
		}
	}
	return out
}

// Error is an error in the language.
func (p *Printer) Error(err error) string { return p.Text(Of(err)) }

// Text is a message in the language.
func (p *Printer) Text(s Sayable) string {
	if s == nil {
		return ""
	}
	t := s.Message()
	if p == nil || t.IsZero() {
		return t.String()
	}
	switch t.form {
	case named:
		return t.key
	case literal:
		return p.Word(t.key)
	case list:
		items := make([]string, len(t.args))
		for i, item := range t.args {
			items[i] = p.argument(item, false)
		}
		separator := t.key
		if e, ok := p.catalog.entries[plain(separator)]; ok {
			separator = e.forms["other"]
		}
		return strings.Join(items, separator)
	}
	e, known := p.catalog.find(plain(t.key))
	args := t.Args()
	if !known {
		p.miss(t.key)
		return t.only(p.fill(t.format(), t.marked(t.format()), args, nil))
	}
	count := any(nil)
	if len(args) > 0 {
		count = args[0]
	}
	return t.only(p.fill(t.key, t.marked(p.catalog.form(e, count)), args, e.own))
}

// fill sets arguments into a format of the language.
func (p *Printer) fill(key, format string, args []any, own []bool) string {
	var b strings.Builder
	at := 0
	for _, v := range verbsOf(format) {
		b.WriteString(strings.ReplaceAll(format[at:v.from], "%%", "%"))
		at = v.to
		if v.arg >= len(args) {
			b.WriteString(v.spec)
			continue
		}
		b.WriteString(p.set(v, args[v.arg], v.arg < len(own) && own[v.arg], setBy(key, v.arg)))
	}
	b.WriteString(strings.ReplaceAll(format[at:], "%%", "%"))
	return b.String()
}

// setBy returns the verb by which the key formats an argument: what it quotes or truncates is
// quoted and truncated in every language.
func setBy(key string, arg int) verb {
	for _, v := range verbsOf(key) {
		if v.arg == arg {
			return v
		}
	}
	return verb{}
}

// set formats one argument by its verb.
func (p *Printer) set(v verb, arg any, own bool, key verb) string {
	switch arg.(type) {
	case Sayable, error, Figure, string:
	default:
		if v.letter == 'w' || v.letter == 's' && isNumber(arg) {
			return fmt.Sprint(arg)
		}
		return fmt.Sprintf(v.spec, arg)
	}
	text := p.argument(arg, own || key.letter == 'q' || key.letter == 'v')
	switch {
	case v.letter == 'q' && key.letter == 'q':
		return fmt.Sprintf(key.spec, text)
	case v.letter == 'q' || key.letter == 's' && v.letter == 's' && v.spec != "%s":
		return fmt.Sprintf(v.spec, text)
	}
	return text
}

func isNumber(arg any) bool {
	switch arg.(type) {
	case int, int64, int32, uint16, uint32, uint64:
		return true
	}
	return false
}

// argument is one argument in the language; an own one that is plain text stays.
func (p *Printer) argument(arg any, own bool) string {
	switch arg := arg.(type) {
	case Own:
		return string(arg)
	case Sayable:
		return p.Text(arg)
	case Figure:
		return arg.Localize(p.catalog.Figures)
	case error:
		return p.Error(arg)
	case string:
		if own {
			return arg
		}
		return p.Word(arg)
	}
	return fmt.Sprint(arg)
}

// Word is the text of a key without gaps, or a figure in the format of the language. Names and other
// unknown text are unchanged.
func (p *Printer) Word(english string) string {
	if p == nil || english == "" {
		return withoutContext(english)
	}
	if e, known := p.catalog.find(english); known {
		return e.forms["other"]
	}
	if figure, is := p.catalog.Figures.Rewrite(english); is {
		return figure
	}
	return withoutContext(english)
}

// Whole translates an English text that the catalog has as a whole; any other stays English. Its
// parts are not looked up, which for a page of help would take seconds.
func (p *Printer) Whole(english string) string {
	if p == nil || english == "" {
		return withoutContext(english)
	}
	if e, known := p.catalog.find(plain(english)); known {
		return e.forms["other"]
	}
	p.miss(english)
	return withoutContext(english)
}

func (p *Printer) miss(key string) {
	if !strings.ContainsFunc(plain(key), unicode.IsLetter) {
		return
	}
	p.mutex.Lock()
	defer p.mutex.Unlock()
	p.missing[key]++
}

// Missing returns the keys printed in English because the catalog has no text for them, in
// alphabetical order.
func (p *Printer) Missing() []string {
	if p == nil {
		return nil
	}
	p.mutex.Lock()
	defer p.mutex.Unlock()
	var out []string
	for key := range p.missing {
		out = append(out, key)
	}
	slices.Sort(out)
	return out
}
