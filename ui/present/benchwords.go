package present

import (
	"tenthpoint/internal/bench"
	"tenthpoint/ui/model"
)

// doubtWords name the reasons to doubt a reading.
var doubtWords = map[bench.Code]string{
	bench.WrongMass:     "wrong mass",
	bench.MeterFailed:   "meter failed",
	bench.MeterOverdue:  "meter overdue",
	bench.NeverChecked:  "meter never checked",
	bench.OtherEdition:  "other calibration",
	bench.Cold:          "too cold",
	bench.FromDryer:     "hot from the dryer",
	bench.EstimateOnly:  "only an estimate",
	bench.MeterToGrain:  "meter and grain apart",
	bench.RoomOutside:   "room out of range",
	bench.OutsidePosted: "outside what is posted",
	bench.NoSample:      "no grain temperature",
	bench.NoRoom:        "no room temperature",
	bench.ByHand:        "typed by hand",
	bench.InventedChart: "example chart",
	bench.WideSpread:    "tests differ",
	bench.TooFewTests:   "too few tests",
	bench.NearLimit:     "near a limit",
}

// doubtWord is what a doubt is called.
func doubtWord(c bench.Code) string {
	if word, known := doubtWords[c]; known {
		return Say(word)
	}
	return string(c)
}

// dropWords name the rules under which a test may be left out.
var dropWords = map[bench.DropRule]string{
	bench.Spoiled:            "the test was spoiled",
	bench.FarthestFromMiddle: "farthest from the middle one, and the spread too wide",
}

func dropWord(r bench.DropRule) string {
	if word, known := dropWords[r]; known {
		return Say(word)
	}
	return string(r)
}

// purposeWords name what grain is to be dry enough for.
var purposeWords = map[bench.Purpose]string{
	bench.ByClass:      "by class",
	bench.ToBuy:        "to buy as dry",
	bench.ToStoreShort: "to store a short time",
	bench.ToStoreLong:  "to store a long time",
}

func purposeWord(p bench.Purpose) string {
	if word, known := purposeWords[p]; known {
		return Say(word)
	}
	return string(p)
}

// standingWord says in a word how a meter stands with its checks.
func standingWord(s bench.State) model.Remark {
	switch s {
	case bench.Good:
		return model.Remark{State: model.OK, Text: Say("checked")}
	case bench.Due:
		return model.Remark{State: model.Warn, Text: Say("check due")}
	case bench.Overdue:
		return model.Remark{State: model.Stop, Text: Say("check overdue")}
	case bench.Failed:
		return model.Remark{State: model.Stop, Text: Say("failed its check")}
	}
	return model.Remark{State: model.Warn, Text: Say("never checked")}
}
