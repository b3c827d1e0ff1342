package lab

import (
	"tenthpoint/internal/dryness"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// doubtWords name the reasons to doubt a reading.
var doubtWords = map[moisture.Code]string{
	moisture.WrongMass:     "wrong mass",
	moisture.MeterFailed:   "meter failed",
	moisture.MeterOverdue:  "meter overdue",
	moisture.NeverChecked:  "meter never checked",
	moisture.OtherEdition:  "other calibration",
	moisture.Cold:          "too cold",
	moisture.FromDryer:     "hot from the dryer",
	moisture.EstimateOnly:  "only an estimate",
	moisture.MeterToGrain:  "meter and grain apart",
	moisture.RoomOutside:   "room out of range",
	moisture.OutsidePosted: "outside what is posted",
	moisture.NoSample:      "no grain temperature",
	moisture.NoRoom:        "no room temperature",
	moisture.ByHand:        "typed by hand",
	moisture.InventedChart: "example chart",
	moisture.WideSpread:    "tests differ",
	moisture.TooFewTests:   "too few tests",
	moisture.NearLimit:     "near a limit",
}

// doubtWord names a warning.
func doubtWord(in session.Language, c moisture.Code) string {
	if word, known := doubtWords[c]; known {
		return in.Say(word)
	}
	return string(c)
}

// exclusionWords name the rules under which a test may be left out.
var exclusionWords = map[moisture.ExclusionRule]string{
	moisture.Spoiled:            "the test was spoiled",
	moisture.FarthestFromMiddle: "farthest from the middle one, and the spread too wide",
}

func exclusionWord(in session.Language, r moisture.ExclusionRule) string {
	if word, known := exclusionWords[r]; known {
		return in.Say(word)
	}
	return string(r)
}

// purposeWords name the uses grain must be dry enough for.
var purposeWords = map[dryness.Purpose]string{
	dryness.ByClass:      "by class",
	dryness.ToBuy:        "to buy as dry",
	dryness.ToStoreShort: "to store a short time",
	dryness.ToStoreLong:  "to store a long time",
}

func purposeWord(in session.Language, p dryness.Purpose) string {
	if word, known := purposeWords[p]; known {
		return in.Say(word)
	}
	return string(p)
}

// methodWord names a method.
func methodWord(in session.Language, m meter.Method) string { return in.Say(m.String()) }

// instrumentStatus returns a word for whether a meter's checks are in order.
func instrumentStatus(in session.Language, s meter.State) model.Status {
	switch s {
	case meter.Good:
		return model.Status{State: model.OK, Text: in.Say("checked")}
	case meter.Due:
		return model.Status{State: model.Warn, Text: in.Say("check due")}
	case meter.Overdue:
		return model.Status{State: model.Stop, Text: in.Say("check overdue")}
	case meter.Failed:
		return model.Status{State: model.Stop, Text: in.Say("failed its check")}
	}
	return model.Status{State: model.Warn, Text: in.Say("never checked")}
}
