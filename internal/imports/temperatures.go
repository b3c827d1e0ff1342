package imports

import "tenthpoint/internal/message"

// Cable is one reading of a cable, as texts of the fields by which temperatures are typed of a bin.
type Cable struct {
	Bin, Day, Readings, Grain, Note string
}

// Fields are its texts by the ids of those fields.
func (c Cable) Fields() map[string]string {
	return map[string]string{"from": c.Bin, "day": c.Day, "readings": c.Readings, "grain": c.Grain, "reason": c.Note}
}

// Columns are the columns of the fields.
func (Cable) Columns() map[string]string {
	return map[string]string{"from": "bin", "day": "day", "readings": "readings", "grain": "grain", "reason": "note"}
}

// cable reads a row of the list of temperatures.
func (r *reader) cable() {
	c := Cable{
		Bin: r.needed("bin", message.New("the short name of the bin it lies in")), Day: r.needed("day", message.New("the day the cable was read")),
		Readings: r.needed("readings", message.New("the temperatures from the floor up, such as 52F 54F 61F")), Grain: r.text("grain"), Note: r.text("note"),
	}
	if len(r.row.Problems) == 0 {
		r.row.Cable = &c
	}
}
