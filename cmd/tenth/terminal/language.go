package terminal

import (
	"context"
	"os"
	"strings"

	"tenthpoint/internal/book/sqlite"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/i18n"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/worksheet"
)

// HouseLanguage returns the printer for the language of the book a command line names; nil, which
// is English, where there is no such book or it cannot be read.
func HouseLanguage(ctx context.Context, args []string) *message.Printer {
	path, err := BookFlags{Book: namedBook(args)}.BookPath()
	if err != nil {
		return nil
	}
	file, err := sqlite.Open(path, ReadOnly)
	if err != nil {
		return nil
	}
	defer file.Close()
	profiles, err := office.RecordsOf[elevator.Profile](ctx, file)
	if err != nil || len(profiles) == 0 {
		return nil
	}
	return i18n.In(profiles[0].Language)
}

// namedBook returns the book a command line names, before it is parsed.
func namedBook(args []string) string {
	for i, arg := range args {
		if path, is := strings.CutPrefix(arg, "--book="); is {
			return path
		}
		if arg == "--book" && i+1 < len(args) {
			return args[i+1]
		}
	}
	return os.Getenv("TENTHPOINT_BOOK")
}

// Language returns the elevator's translation for a working.
func (p *Session) Language() worksheet.Translate { return i18n.In(p.Profile().Language).Word }

// GrainName returns a grain's name in the language of the elevator; an unknown id is unchanged.
func (p *Session) GrainName(id string) string {
	c, err := grain.ByID(id)
	if err != nil {
		return id
	}
	return p.Printer.Word(c.Name)
}

// WorkingOf returns the translation for a load's working.
func (p *Session) WorkingOf(l *load.Load) worksheet.Translate {
	say := p.Language()
	return func(english string) string { return say(l.Details.Under.Remark(english)) }
}
