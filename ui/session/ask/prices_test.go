package ask

import (
	"testing"

	"tenthpoint/ui/session/sessiontest"
)

// The prices of the day are typed once; what is posted already is left as it is.
func TestPostedPricesSheet(t *testing.T) {
	s := sessiontest.DemoRoom(t, 20).Session
	now, err := postedToday(s)
	if err != nil || len(now) > 0 {
		t.Fatalf("posted already: %v, %v", now, err)
	}
	if _, faults := readPrices(s, now, map[string]string{"corn": "four"}); faults["corn"] == "" {
		t.Error("words are taken for a price")
	}
	prices, faults := readPrices(s, now, map[string]string{"corn": "4.12", "soybeans": " "})
	if len(prices) != 1 || len(faults) > 0 {
		t.Fatalf("prices %v, faults %v", prices, faults)
	}
	post(s, prices)
	if now, err = postedToday(s); err != nil || now["corn"].Price.String() != "$4.12/bu" {
		t.Errorf("posted: %v, %v", now, err)
	}
	if again, _ := readPrices(s, now, map[string]string{"corn": "4.12"}); len(again) > 0 {
		t.Errorf("posted twice: %v", again)
	}
}
