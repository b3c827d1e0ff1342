package checker

import (
	"maps"
	"slices"

	"tenthpoint/internal/message"
)

// Languages are the languages of the page by their codes, each with its own name.
func (c *Checker) Languages() [][2]string {
	var out [][2]string
	for _, code := range slices.Sorted(maps.Keys(c.names)) {
		out = append(out, [2]string{code, c.names[code]})
	}
	return out
}

// Body is the page itself in a language: how to read a slip, and room for the rest. Made is the hash
// of the page without a house, which the handbook has too.
func (c *Checker) Body(language, made string) string {
	s := c.sheet(language)
	title := s.Say("Check a scale ticket")
	if c.house.Business != "" {
		title = s.Say("Check a scale ticket of %v", c.house.Business)
	}
	s.put(`<header><h1>%s</h1><p>%s</p>`, title, s.Say("This page works by itself: it keeps nothing and sends nothing, and needs no internet."))
	if c.house.Demo {
		s.put(`<p class="mark">%s</p>`, s.Say("EXAMPLE - NOT FOR TRADE"))
	}
	s.put(`<label>%s <select id="language">`, s.Say("Language"))
	for _, l := range c.Languages() {
		chosen := ""
		if l[0] == language {
			chosen = " selected"
		}
		s.put(`<option value="%s"`+chosen+`>%s</option>`, l[0], l[1])
	}
	s.put(`</select></label></header>`)
	s.put(`<section><h2>%s</h2><p>%s</p>`, s.Say("From the square on the slip"), s.Say("Take a picture of the square, straight and in good light, or choose one."))
	s.put(`<label class="button">%s<input type="file" id="photo" accept="image/*"></label>`, s.Say("Picture of the square"))
	s.put(`<form id="paste"><label>%s<textarea id="text" rows="3" autocapitalize="characters" spellcheck="false"></textarea></label><button>%s</button></form>`, s.Say("Or the text of the square, as another reader gives it"), s.Say("Check this text"))
	s.put(`<p id="busy" role="status" aria-live="polite"></p><div id="checked" aria-live="polite"></div></section>`)
	s.put(`<div id="rest"></div><footer>`)
	if len(c.house.Keys) > 0 {
		s.put(`<p>%s</p>`, s.Say("The key of the house: %s", message.Own(c.house.Keys[len(c.house.Keys)-1].Fingerprint())))
	}
	s.put(`<p>%s</p>`, s.Say("SHA-256 of the engine in this page: %s", message.Own(made)))
	s.put(`<p><button type="button" id="print">%s</button> <button type="button" id="save">%s</button></p></footer>`, s.Say("Print"), s.Say("Save what is shown"))
	return s.String()
}

// Rest is the calculator and the posted rates. Every edition is read for it, so the page asks for it
// when the way to check a slip stands on the screen.
func (c *Checker) Rest(language string) string {
	s := c.sheet(language)
	c.calculator(s)
	c.posted(s)
	return s.String()
}

// calculator is the form for figures that are typed.
func (c *Checker) calculator(s *sheet) {
	s.put(`<section><h2>%s</h2><p>%s</p><form id="typed">`, s.Say("From figures"), s.Say("Type weight and moisture, and see what would be paid and why."))
	s.put(`<label>%s <select id="edition">`, s.Say("Posted rates"))
	for i, e := range c.editions() {
		chosen := ""
		if i == 0 {
			chosen = " selected"
		}
		s.put(`<option value="%s"`+chosen+`>%s</option>`, e.Hash, s.Say("%s: %v, %s", message.Words(nameOf(s, e)), e.ID, e.Days()))
	}
	s.put(`</select></label><label>%s<input type="file" id="rates" accept=".toml"></label><p id="opened" role="status"></p>`, s.Say("Open a posted file of rates"))
	s.put(`<label>%s<input type="date" id="day"></label><div id="boxes"></div><button>%s</button></form><div id="worked" aria-live="polite"></div></section>`, s.Say("Day of the sample"), s.Say("Work it out"))
}

// posted are the rates themselves.
func (c *Checker) posted(s *sheet) {
	s.put(`<section><h2>%s</h2>`, s.Say("The posted rates"))
	for _, e := range c.editions() {
		s.put(`<details><summary>%s</summary><p>%s</p>`, s.Say("%s: %v, %s", message.Words(nameOf(s, e)), e.ID, e.Days()), s.Say("SHA-256 of its file: %s", message.Own(e.Hash)))
		section := ""
		for _, line := range e.Lines() {
			if title := s.printer.Text(line.Section); title != section {
				if section != "" {
					s.put(`</dl>`)
				}
				s.put(`<h3>%s</h3><dl>`, title)
				section = title
			}
			s.put(`<div><dt>%s</dt><dd>%s</dd></div>`, s.printer.Text(line.Label), s.printer.Text(line.Value))
		}
		s.put(`</dl></details>`)
	}
	s.put(`</section>`)
}
