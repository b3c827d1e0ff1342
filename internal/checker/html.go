package checker

import (
	"fmt"
	"html"
	"strings"

	"tenthpoint/internal/message"
)

// sheet is an answer being written, in a language.
type sheet struct {
	strings.Builder
	printer *message.Printer
}

func (c *Checker) sheet(language string) *sheet {
	if printer, known := c.printers[language]; known {
		return &sheet{printer: printer()}
	}
	return &sheet{}
}

// Say is a text in the language of the answer.
func (s *sheet) Say(english string, args ...any) string { return s.printer.Say(english, args...) }

// put writes markup; every %s in it is replaced by a text or a number, whose own signs mean nothing.
func (s *sheet) put(markup string, values ...any) {
	for _, value := range values {
		before, after, _ := strings.Cut(markup, "%s")
		s.WriteString(before)
		s.WriteString(html.EscapeString(fmt.Sprint(value)))
		markup = after
	}
	s.WriteString(markup)
}

// state is the state of a line: its class in the page, and the word that says it without a colour.
type state string

const (
	good  state = "good"
	warn  state = "warn"
	wrong state = "wrong"
)

// box is a statement that must be noticed.
func (s *sheet) box(is state, title string, sentences ...string) {
	s.put(`<section class="box `+string(is)+`" role="status"><h2>%s</h2>`, title)
	for _, sentence := range sentences {
		if sentence != "" {
			s.put(`<p>%s</p>`, sentence)
		}
	}
	s.put(`</section>`)
}

// pairs are names and values.
func (s *sheet) pairs(of ...[2]string) {
	s.put(`<dl>`)
	for _, pair := range of {
		if pair[1] != "" {
			s.put(`<div><dt>%s</dt><dd>%s</dd></div>`, pair[0], pair[1])
		}
	}
	s.put(`</dl>`)
}

// row is a row of a table; its first cell heads it.
func (s *sheet) row(cells ...string) {
	s.put(`<tr><th scope="row">%s</th>`, cells[0])
	for _, cell := range cells[1:] {
		s.put(`<td>%s</td>`, cell)
	}
	s.put(`</tr>`)
}

// head opens a table.
func (s *sheet) head(caption string, columns ...string) {
	s.put(`<div class="wide" tabindex="0" role="region" aria-label="%s"><table><caption>%s</caption><thead><tr>`, caption, caption)
	for _, column := range columns {
		s.put(`<th scope="col">%s</th>`, column)
	}
	s.put(`</tr></thead><tbody>`)
}

func (s *sheet) foot() { s.put(`</tbody></table></div>`) }
