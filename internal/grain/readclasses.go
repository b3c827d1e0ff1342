package grain

import (
	"tenthpoint/internal/law"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/tomlfile"
)

// classNames are the classes of the Canadian order, driest first.
var classNames = []string{"straight", "tough", "damp", "moist", "wet"}

// readClasses reads the highest moisture of each class that has one. A class
// left out is one the grain does not have; the class after the last is open
// upwards.
func (t *Tables) readClasses(_ *law.File, root *tomlfile.Table) {
	seen := map[string]bool{}
	for i, row := range root.Tables("grain") {
		row.SetTitle(message.New("place|grain %d", i+1))
		r := moistureRow{grain: row.Text("name"), source: row.Text("citation")}
		if r.grain != "" && seen[r.grain] {
			row.AddProblem("name", message.New("%v stands twice", r.grain), message.New("Keep the row that is law."))
		}
		seen[r.grain] = true
		r.readEnds(row)
		t.classes = append(t.classes, r)
	}
	if len(t.classes) == 0 {
		root.AddProblem("", message.New("the file has no [[grain]]"), message.New("Add at least one."))
	}
}

func (r *moistureRow) readEnds(row *tomlfile.Table) {
	r.last = classNames[0]
	for i, class := range classNames[:len(classNames)-1] {
		highest, given := row.OptionalAmount(class, quantity.Percent)
		if !given {
			continue
		}
		if n := len(r.ends); n > 0 && !highest.More(r.ends[n-1].highest) {
			row.AddProblem(class, message.New("%v ends at %s, not above %v", class, highest.Written(), r.ends[n-1].name), message.New("Write the classes in rising order."))
		}
		r.ends, r.last = append(r.ends, classEnd{class, highest}), classNames[i+1]
	}
	if row.Has("last") { // where the order leaves out the class after the last end
		r.last = row.Choice("last", classNames[1:]...)
	}
	if len(r.ends) == 0 {
		row.AddProblem("", message.New("%s has no class with an end", row.Name("")), message.Words("Write at least straight = \"14.5 %\"."))
	}
}
