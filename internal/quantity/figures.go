package quantity

import "tenthpoint/internal/flatjson"

// ReadFigures reads a JSON object of amounts by name, as MarshalText writes them. Not
// ok are figures that only encoding/json can judge.
func ReadFigures(object string) (figures map[string]Amount, ok bool) {
	figures = map[string]Amount{}
	ok = flatjson.Members(object, func(name, figure string) bool {
		var a Amount
		_, twice := figures[name]
		if twice || a.UnmarshalText([]byte(figure)) != nil {
			return false
		}
		figures[name] = a
		return true
	})
	return figures, ok
}
