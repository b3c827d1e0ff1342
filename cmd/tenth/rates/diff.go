package rates

import (
	"fmt"
	"strconv"
	"strings"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/message"
	"tenthpoint/internal/rates"
)

// ratesDiff shows where two editions part.
type ratesDiff struct {
	terminal.BookFlags
	First  string `arg:"" help:"The one edition, by id or file." placeholder:"A"`
	Second string `arg:"" help:"The other." placeholder:"B"`
	JSON   bool   `help:"Print for programs: every figure as text."`
}

func (ratesDiff) Help() string {
	return `Only lines on which the two part are shown: "-" is the first edition, "+" the second, each with the line of its file.

    tenth rates diff corn-main-2025 corn-main-2025-b
    tenth rates diff corn-main-2026 new-corn.toml`
}

// changeJSON is one line on which two editions part, for programs.
type changeJSON struct {
	Key        string `json:"key"`
	Section    string `json:"section"`
	Label      string `json:"label"`
	Before     string `json:"before,omitempty"`
	BeforeLine string `json:"before_line,omitempty"`
	After      string `json:"after,omitempty"`
	AfterLine  string `json:"after_line,omitempty"`
}

func (c ratesDiff) Run(t *terminal.Terminal) error {
	a, err := editionNamed(t, c.BookFlags, c.First)
	if err != nil {
		return err
	}
	b, err := editionNamed(t, c.BookFlags, c.Second)
	if err != nil {
		return err
	}
	changes := rates.Diff(a, b)
	if c.JSON {
		rows := []changeJSON{}
		for _, one := range changes {
			rows = append(rows, changeJSON{one.Key, one.Section.String(), one.Label.String(), one.Before.String(), lineNumber(one.BeforeAt), one.After.String(), lineNumber(one.AfterAt)})
		}
		return t.PrintJSON(map[string]any{"first": editionForJSON(a), "second": editionForJSON(b), "changes": rows})
	}
	t.Say("- %s", terminal.EditionLine(a))
	t.Say("+ %s", terminal.EditionLine(b))
	if len(changes) == 0 {
		t.Say("\nBoth say the same in every line.")
	}
	section := ""
	for _, one := range changes {
		if under := t.Printer.Text(one.Section); under != section {
			section = under
			t.Say("\n%s", strings.ToUpper(section))
		}
		t.Say("%s", one.Label)
		printSide(t, "-", one.BeforeAt, one.Before)
		printSide(t, "+", one.AfterAt, one.After)
	}
	return nil
}

// printSide prints one edition's text of a line, if it has any.
func printSide(t *terminal.Terminal, mark string, line int, says message.Text) {
	if !says.IsZero() {
		fmt.Fprintf(t.Stdout, "  %s %3d  %s\n", mark, line, t.Printer.Text(says))
	}
}

func lineNumber(line int) string {
	if line == 0 {
		return ""
	}
	return strconv.Itoa(line)
}
