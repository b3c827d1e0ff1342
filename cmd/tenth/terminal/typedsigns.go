package terminal

import (
	"reflect"
	"regexp"
	"slices"

	"github.com/alecthomas/kong"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// LanguageFlag chooses the language of a command that works without a book. With a book that
// belongs to the elevator, its set-up says the language.
type LanguageFlag struct {
	Language LanguageCode `help:"Language of figures and answers, where it is not that of the book." placeholder:"en|es|fr"`
}

// LanguageCode is one of the languages there are. It is taken off the command line before this is
// parsed (see [SpokenLanguage]), so that faults of the line are said in it too.
type LanguageCode string

// figurePlaces are the placeholders of flags and arguments in which figures are typed.
var figurePlaces = []string{
	"WEIGHT", "PERCENT", "MONEY", "GRAMS", "POINTS", "TEMPERATURE", "MM", "RATE", "DIVISIONS", "FIGURE", "CFM", "HP",
	"LENGTH", "FUEL", "KWH", "HOURS", "50F..90F", "20F", "BIN=WEIGHT", "FACTOR=RESULT", "PERCENT[@TEMPERATURE]", "DIVISIONS[@TEMPERATURE]", "DAYS@TEMPERATURE", "WET/DRIED/EMPTY", "'16.9 %'",
}

// ReadSigns converts the figures of a parsed command line from the format of a language to the one
// that commands parse. Text that could mean two figures is refused with both.
func ReadSigns(line *kong.Context, signs message.Figures) error {
	for _, part := range line.Path {
		value, name := part.Positional, ""
		switch {
		case part.Flag != nil:
			value, name = part.Flag.Value, "--"+part.Flag.Name
		case value != nil:
			name = value.Name
		default:
			continue
		}
		read := WithPoint
		if form, isList := figureLists[value.Tag.PlaceHolder]; isList {
			read = form.listWithPoint
		} else if !slices.Contains(figurePlaces, value.Tag.PlaceHolder) {
			continue
		}
		if err := readSigns(name, value.Target, signs, read); err != nil {
			return err
		}
	}
	return nil
}

// readSigns converts the text, or each of the texts, that a value holds.
func readSigns(name string, held reflect.Value, signs message.Figures, read func(name, text string, signs message.Figures) (string, error)) error {
	switch held.Kind() {
	case reflect.String:
		text, err := read(name, held.String(), signs)
		if err != nil {
			return err
		}
		held.SetString(text)
	case reflect.Slice:
		for i := range held.Len() {
			if err := readSigns(name, held.Index(i), signs, read); err != nil {
				return err
			}
		}
	}
	return nil
}

// betweenFigures are the separators between the figures of a text.
var betweenFigures = regexp.MustCompile(`[=@/]|\.\.`)

// WithPoint converts every figure of a text such as "test-weight=54,2", "17,5@20C" or "8,5..20".
func WithPoint(name, text string, signs message.Figures) (string, error) {
	at := betweenFigures.FindStringIndex(text)
	if at == nil {
		return quantity.WithPoint(name, text, signs)
	}
	first, err := quantity.WithPoint(name, text[:at[0]], signs)
	if err != nil {
		return "", err
	}
	rest, err := WithPoint(name, text[at[1]:], signs)
	return first + text[at[0]:at[1]] + rest, err
}
