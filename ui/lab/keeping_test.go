package lab

import (
	"testing"
)

// Until when grain is to be kept is asked once it has a moisture; what cannot be is refused at its field.
func TestDoesItKeep(t *testing.T) {
	r, b := benchRoom(t)
	if canAskKeeping(b) {
		t.Fatal("it is asked of a sample that was not tested")
	}
	b.typeAll("mass 250", "temperature 60", "room 65", "dial 60")
	if err := b.Add(); err != nil {
		t.Fatal(err)
	}
	if !canAskKeeping(b) {
		t.Fatal("the sample has a moisture")
	}
	askKeeping(b)
	q := r.Question()
	wrong := q.Check(map[string]string{"until": "2001-01-01", "at": "warm", "fuel": "2", "power": "0.12 $/kWh"})
	for _, field := range []string{"until", "at", "fuel"} {
		if wrong[field] == "" {
			t.Errorf("%s is not refused: %v", field, wrong)
		}
	}
	if wrong["power"] != "" {
		t.Errorf("a price of power is refused: %s", wrong["power"])
	}
	until := r.Session.Desk.Today().AddDays(90).String()
	if wrong := q.Check(map[string]string{"until": until, "at": "50F"}); len(wrong) > 0 {
		t.Fatalf("refused: %v", wrong)
	}
	r.Answer(map[string]string{"until": until, "at": "50F"})
}
