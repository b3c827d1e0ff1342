package terminal

import (
	"context"
	"os"
	"slices"
	"strings"

	"tenthpoint/internal/book/engines"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/i18n"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/settle"
)

// HouseLanguage returns the printer for the language of the book a command line names; nil, which
// is English, where there is no such book or it cannot be read.
func HouseLanguage(ctx context.Context, args []string) *message.Printer {
	path, err := BookFlags{Book: namedBook(args)}.BookPath()
	if err != nil {
		return nil
	}
	file, err := engines.Open(path, ReadOnly)
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

// HelpLanguage returns the language that a command line asks for help in, and the line without it: every
// command has its help in every language.
func HelpLanguage(args []string) (rest []string, in *message.Printer, asked bool) {
	if !slices.Contains(args, "--help") && !slices.Contains(args, "-h") {
		return args, nil, false
	}
	for i, arg := range args {
		code, is := strings.CutPrefix(arg, "--language=")
		end := i + 1
		if arg == "--language" && end < len(args) {
			code, is, end = args[end], true, end+1
		}
		if is && i18n.Known(code) {
			return slices.Concat(args[:i], args[end:]), i18n.In(code), true
		}
	}
	return args, nil, false
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

// GrainName returns a grain's name in the language of the elevator; an unknown id is unchanged.
func (p *Session) GrainName(id string) string {
	return p.Printer.Word(grain.NameOf(id))
}

// Working is the working of a load as text, in the language of the elevator.
func (p *Session) Working(s *settle.Settlement, l *load.Load, width int) string {
	return s.Sheet.Remarked(l.Details.Under.Remark).TextIn(width, p.HousePrinter())
}

// HousePrinter is the printer of the elevator's language.
func (p *Session) HousePrinter() *message.Printer { return i18n.In(p.Profile().Language) }
