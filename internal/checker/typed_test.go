package checker

import (
	"regexp"
	"strings"
	"testing"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/settle"
	"tenthpoint/schedules"
)

// A truck and its trailer weighed apart, for two owners of whom the second has a third: typed into the
// page, every figure of the second is that of a settlement, and a wrong one is told.
func TestTypedForAnOwner(t *testing.T) {
	set, err := schedules.Editions()
	if err != nil {
		t.Fatal(err)
	}
	e, _ := set.ByID("corn-main-2026")
	c, err := New(House{Editions: []File{{Name: e.ID + ".toml", Text: string(e.Text)}}})
	if err != nil {
		t.Fatal(err)
	}
	one, three := quantity.Int(1, quantity.Plain), quantity.Int(3, quantity.Plain)
	want, err := settle.Settle(settle.Facts{
		Drafts:   []settle.Draft{{Gross: quantity.Int(40000, quantity.Lb), Tare: quantity.Int(18000, quantity.Lb)}, {Gross: quantity.Int(30020, quantity.Lb), Tare: quantity.Int(9000, quantity.Lb)}},
		Moisture: settle.Reading{Percent: quantity.Of("17.2", quantity.Percent), Source: message.Words("typed")},
		Shares:   []settle.Share{{Owner: "a", Parts: quantity.Int(2, quantity.Plain), Of: three}, {Owner: "b", Parts: one, Of: three}},
		Deal:     settle.Deal{Price: &settle.Price{Amount: quantity.Of("4.15", quantity.DollarsPerBu)}},
	}, e)
	if err != nil {
		t.Fatal(err)
	}
	figure := func(line string) string {
		step, ok := want.Sheet.Step(settle.OwnLine(2, line))
		if !ok {
			t.Fatalf("the second owner has no %s", line)
		}
		return step.Printed()
	}
	typed := map[string]string{
		"gross": "40000", "tare": "18000", "gross.2": "30,020", "tare.2": "9000", "moisture": "17.2", "price": "4.15",
		"parts": "2/3; 1/3", "owner": "2", "said.payable": strings.TrimPrefix(figure(settle.LinePayable), "$"),
	}
	work := func(changes map[string]string) string {
		all := map[string]string{}
		for _, from := range []map[string]string{typed, changes} {
			for name, text := range from {
				all[name] = text
			}
		}
		return c.Work("en", e.Hash, "2026-10-01", all)
	}
	shown := work(nil)
	for _, line := range []string{settle.LineSettled, settle.LineQuantity, settle.LinePayable} {
		if !strings.Contains(shown, figure(line)) {
			t.Errorf("%s is %s, which is not shown:\n%.1500s", line, figure(line), shown)
		}
	}
	refused := regexp.MustCompile(`class="[^"]*\bwrong\b`)
	differs := regexp.MustCompile(`class="differs"`)
	if differs.MatchString(shown) || !differs.MatchString(work(map[string]string{"said.payable": "1"})) {
		t.Errorf("a right payable, or a wrong one, is told otherwise:\n%.1500s", shown)
	}
	for name, changes := range map[string]map[string]string{
		"parts that are no whole": {"parts": "2/3 1/2"}, "a part that is none": {"parts": "2/3 x"}, "an owner that is not there": {"owner": "3"},
		"half a trailer": {"tare.2": ""},
	} {
		if got := work(changes); !refused.MatchString(got) {
			t.Errorf("%s: nothing is wrong:\n%.600s", name, got)
		}
	}
}
