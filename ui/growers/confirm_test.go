package growers

import (
	"testing"

	"tenthpoint/ui/model"
	"tenthpoint/ui/session/sessiontest"
)

// A sample is drawn and its letters printed; an answer is written to the letter of the chosen grower.
func TestLettersToDepositors(t *testing.T) {
	r := sessiontest.DemoRoom(t, 60)
	g := NewGrowers(r.Session)
	g.Reload()
	askSample(g)
	if faults := r.Answer(map[string]string{"size": "some"}); faults["size"] == "" {
		t.Errorf("no number of depositors: %v", faults)
	}
	if faults := r.Answer(map[string]string{"size": "2", "seed": "4711"}); len(faults) > 0 {
		t.Fatalf("refused: %v", faults)
	}
	sessiontest.WantSaid(t, r, model.OK, "is drawn")
	drawn, l, written := letterTo(r.Session, "nobody")
	if written || len(drawn.Letters) != 2 || l.Number != 0 {
		t.Fatalf("the sample is %+v", drawn)
	}
	g.Choose(drawn.Letters[1].Grower)
	askAnswer(g)
	if faults := r.Answer(map[string]string{"answer": "differs"}); faults["words"] == "" {
		t.Errorf("it differs without words: %v", faults)
	}
	r.Answer(map[string]string{"answer": "differs", "words": "1,200 bu"})
	sessiontest.WantSaid(t, r, model.OK, "is answered")
	if _, l, _ := letterTo(r.Session, g.chosen); l.Answer == nil || l.Answer.Words != "1,200 bu" {
		t.Errorf("the letter is %+v", l)
	}
}
