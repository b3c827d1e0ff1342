package quantity

import (
	"strings"

	"tenthpoint/internal/flatjson"
)

// ReadFigures reads a JSON object of amounts by name, as MarshalText writes them. Not
// ok are figures that only encoding/json can judge.
func ReadFigures(object string) (figures map[string]Amount, ok bool) {
	figures = make(map[string]Amount, strings.Count(object, `":"`))
	ok = flatjson.Members(object, func(name, figure string) bool {
		a, err := readStored(figure)
		_, twice := figures[name]
		figures[name] = a
		return err == nil && !twice
	})
	return figures, ok
}
