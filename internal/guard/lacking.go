package guard

import (
	"strings"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
)

// Lacking is a compulsory field that a load does not have.
type Lacking struct {
	Field string // of the load's form
	Said  message.Text
}

var compulsory = map[elevator.Compulsory]struct {
	name  message.Text
	lacks func(*load.Load) bool
	Lacking
}{
	elevator.BinCompulsory: {
		message.New("Pit or bin"),
		func(l *load.Load) bool { return l.Details.Bin == "" },
		Lacking{"bin", message.New("No pit or bin yet: this house asks for it.")},
	},
	elevator.MeterCompulsory: {
		message.New("Moisture meter"),
		func(l *load.Load) bool {
			return isTested(l) && l.Sample.Moisture.Meter == "" && l.Sample.Moisture.Bench == nil
		},
		Lacking{"meter", message.New("No meter named yet: this house asks for it.")},
	},
	elevator.SampleCompulsory: {
		message.New("Sample"),
		func(l *load.Load) bool { return isTested(l) && l.Sample.Number == "" },
		Lacking{"number", message.New("No sample number yet: this house asks for it.")},
	},
	elevator.CropYearCompulsory: {
		message.New("Crop year"),
		func(l *load.Load) bool { return l.Details.Direction != load.Outbound && l.Details.CropYear == "" },
		Lacking{"crop", message.New("No crop year yet: this house asks for it.")},
	},
}

// Required names what a house may make compulsory.
func Required(c elevator.Compulsory) message.Text { return compulsory[c].name }

func isTested(l *load.Load) bool {
	return l.Details.Direction != load.Outbound && l.Sample.Moisture != nil
}

// Lacks returns what is missing of a load that its elevator makes compulsory.
func Lacks(l *load.Load, p elevator.Profile) []Lacking {
	var out []Lacking
	for _, one := range p.Compulsory {
		if c, known := compulsory[one]; known && c.lacks(l) {
			out = append(out, c.Lacking)
		}
	}
	return out
}

// Incomplete returns an error about what is missing, or nil.
func Incomplete(lacking []Lacking) error {
	if len(lacking) == 0 {
		return nil
	}
	said := make([]message.Text, len(lacking))
	for i, l := range lacking {
		said[i] = l.Said
	}
	return message.Err(message.Incomplete, message.Texts("\n", said))
}

// Typed refuses a weight typed without a reason of the elevator's list.
func Typed(reason string, p elevator.Profile) error {
	if strings.TrimSpace(reason) != "" {
		return nil
	}
	return message.Incomplete.Errorf("a typed weight goes on the ticket with its reason, and none was given. Say one of: %s", message.Names("; ", p.WhyManual()))
}
