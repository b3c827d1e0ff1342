package rates

import (
	"fmt"
	"strconv"
	"strings"
	"unicode/utf8"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/paper/plain"
	"tenthpoint/internal/rates/rule"
)

// ratesShow prints an edition for people.
type ratesShow struct {
	terminal.BookFlags
	Edition string         `arg:"" help:"The edition, by id or file." placeholder:"EDITION"`
	Width   terminal.Width `help:"Width of the page, in letters." default:"88"`
	TOML    bool           `name:"toml" help:"Print the file itself, to begin one's own from it."`
	JSON    bool           `help:"Print for programs: every figure as text."`
}

func (ratesShow) Help() string {
	return `Everything the edition says, in the order of its file; the number before each row is the line of the file. What is worth a second look stands at the end.

    tenth rates show corn-main-2026
    tenth rates show corn-main-2026 --toml > our-corn.toml
    tenth rates show our-corn.toml`
}

// ruleJSON is one row of an edition for programs.
type ruleJSON struct {
	Key     string `json:"key"`
	Section string `json:"section"`
	Label   string `json:"label"`
	Value   string `json:"value"`
	Line    string `json:"line"`
}

func (c ratesShow) Run(t *terminal.Terminal) error {
	e, err := editionNamed(t, c.BookFlags, c.Edition)
	if err != nil {
		return err
	}
	switch {
	case c.TOML:
		_, err := t.Stdout.Write(e.Text)
		return err
	case c.JSON:
		rows := []ruleJSON{}
		for _, l := range e.Lines() {
			rows = append(rows, ruleJSON{l.Key, l.Section.String(), l.Label.String(), l.Value.String(), strconv.Itoa(l.At)})
		}
		return t.PrintJSON(map[string]any{"edition": editionForJSON(e), "rows": rows, "cautions": english(e.Cautions())})
	}
	t.Say("%s", terminal.EditionLine(e))
	printRules(t, e.Lines(), int(c.Width))
	if cautions := e.Cautions(); len(cautions) > 0 {
		t.Say("\nWORTH A SECOND LOOK")
		for _, caution := range cautions {
			t.Say("%s", strings.Join(plain.Paragraph(t.Printer.Text(caution), int(c.Width)), "\n"))
		}
	}
	return nil
}

// printRules prints rows under their headings, each with its line.
func printRules(t *terminal.Terminal, lines []rule.Line, width int) {
	widest := 0
	for _, l := range lines {
		widest = max(widest, utf8.RuneCountInString(t.Printer.Text(l.Label)))
	}
	section := ""
	for _, l := range lines {
		if under := t.Printer.Text(l.Section); under != section {
			section = under
			t.Say("\n%s", strings.ToUpper(section))
		}
		head := fmt.Sprintf("%5d  %s  ", l.At, padded(t.Printer.Text(l.Label), widest))
		for _, part := range plain.Paragraph(t.Printer.Text(l.Value), width-widest-9) {
			t.Say("%s%s", head, part)
			head = strings.Repeat(" ", widest+9)
		}
	}
}

// padded is a text with blanks after it up to a width in letters.
func padded(text string, width int) string {
	return text + strings.Repeat(" ", max(0, width-utf8.RuneCountInString(text)))
}
