package scalelink

import (
	"slices"
	"strings"

	"tenthpoint/internal/quantity"
)

// draft collects the fields of one frame, before the digits are parsed.
type draft struct {
	state State
	mode  Mode
	unit  quantity.Unit
	minus bool
}

// words are all a profile can say with a letter, a bit or Always.
var words = map[string]func(*draft){
	"normal": func(*draft) {},
	"stable": says(Stable),
	"motion": says(Motion),
	"under":  says(Under),
	"over":   says(Over),
	"fault":  says(Fault),
	"gross":  func(d *draft) { d.mode = Gross },
	"net":    func(d *draft) { d.mode = Net },
	"plus":   func(d *draft) { d.minus = false },
	"minus":  func(d *draft) { d.minus = true },
	"lb":     func(d *draft) { d.unit = quantity.Lb },
	"kg":     func(d *draft) { d.unit = quantity.Kg },
	"t":      func(d *draft) { d.unit = quantity.Tonne },
}

// says keeps the worst state of any field.
func says(s State) func(*draft) {
	return func(d *draft) { d.state = max(d.state, s) }
}

func knownWords() string {
	var known []string
	for word := range words {
		known = append(known, word)
	}
	slices.Sort(known)
	return strings.Join(known, ", ")
}
