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

// SpokenLanguage returns the language that a command line asks for, and the line without it: every command
// answers in every language, one that has the flag for something of its own gives its help in it.
func SpokenLanguage(args []string, own bool) (rest []string, in *message.Printer, asked bool, err error) {
	end := slices.Index(args, "--")
	if end < 0 {
		end = len(args)
	}
	helps := slices.Contains(args[:end], "--help") || slices.Contains(args[:end], "-h")
	if own && !helps {
		return args, nil, false, nil
	}
	for i, arg := range args[:end] {
		code, is := strings.CutPrefix(arg, "--language=")
		after := i + 1
		if arg == "--language" && after < end {
			code, is, after = args[after], true, after+1
		}
		if !is {
			continue
		}
		in, err := Language(code)
		return slices.Concat(args[:i], args[after:]), in, err == nil, err
	}
	return args, nil, false, nil
}

// Languages are the codes of the languages there are.
func Languages() []string { return i18n.Codes() }

// Language is the printer of one of the languages there are.
func Language(code string) (*message.Printer, error) {
	if !i18n.Known(code) {
		return nil, Refusal("Give --language "+strings.Join(i18n.Codes(), ", or --language "), "%q is no language here", code)
	}
	return i18n.In(code), nil
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
