package desktop

import (
	"slices"
	"strings"
	"tenthpoint/ui/shell"
	"testing"

	"fyne.io/fyne/v2"
)

// tabOrder is the order in which Tab walks a screen, written out where the
// order of the work is not that of the columns.
var tabOrder = map[string]string{
	"yard":      "grower commodity truck gross moisture test-weight damage bcfm musty heating tare bin terms price remark issue slip",
	"bench":     "load method meter mass temperature room dryer percent test-weight foreign-material damage heat-damage splits number probes place write tests says",
	"meters":    "list checks says meters.check meters.start meters.new meters.change meters.policy meters.print",
	"day":       "day turn.grain turn.money turn.position turn.alerts grain day.close day.print day.export day.statement day.proof go.season go.disputes",
	"making":    "list value beside",
	"season":    "turn.season.grain turn.season.trucks turn.season.house picture 1",
	"disputes":  "list says disputes.raise",
	"samples":   "list samples.label",
	"tickets":   "line list paper tickets.print tickets.working",
	"rates":     "list paper rates.rows rates.try rates.compare rates.problems rates.load rates.other rates.schedule rates.mine rates.prices rates.again rates.text",
	"bins":      "list card bins.move bins.dry bins.measure bins.heat bins.print",
	"growers":   "line list card growers.add growers.change growers.shares growers.truck",
	"gear":      "scales card people bins gear.scale gear.log gear.simulate gear.papers gear.backup gear.verify go.meters go.samples",
	"handbook":  "line table page",
	"setup":     "business street town phone licence unit scale division capacity link grain.barley",
	"board":     "cards",
	"keys":      "keys",
	"settle":    "grower day tariff price contract sale levies advances payees release pay-after corrects manager tickets sheet",
	"payments":  "line list payments.remit payments.totals go.settle",
	"contracts": "line list paper contracts.add contracts.sign contracts.extend contracts.print contracts.settle",
	"prices":    "list prices.post prices.bid prices.before prices.after",
	"due":       "list says due.open due.further",
}

// Tab walks every screen in its focus order, once round, and leaves nothing out.
func TestTabWalksEveryScreen(t *testing.T) {
	s := newScene(t, shell.Look{}, 40)
	for i, row := range Screens {
		s.Go(row.ID)
		if row.ID == "yard" {
			s.letCornBeTyped()
		}
		order := s.Screens[i].FocusOrder()
		if order == nil || len(order.IDs()) == 0 {
			t.Errorf("screen %s has no focus order: the keyboard cannot walk it", row.ID)
			continue
		}
		walked := s.walk(i)
		for _, id := range walked {
			if !slices.Contains(order.IDs(), id) {
				t.Errorf("screen %s: Tab came to %q, which is not in the focus order", row.ID, id)
			}
		}
		if want, written := tabOrder[row.ID]; written && !strings.HasPrefix(strings.Join(walked, " "), want) {
			t.Errorf("screen %s: Tab walks %v, want %s", row.ID, walked, want)
		}
	}
}

// letCornBeTyped opens a form with every field of corn.
func (s *scene) letCornBeTyped() {
	s.Commands.Run("load.new")
	s.come("123", "corn", "77")
	s.write("52300", "17.2", "56.4", "", "", "", "", "24120")
}

// walk presses Tab from the first stop until one comes a second time.
func (s *scene) walk(screen int) []string {
	order := s.Screens[screen].FocusOrder()
	order.FocusFirst()
	var walked []string
	for {
		at := s.Screens[screen].FocusOrder().Current()
		if slices.Contains(walked, at) || len(walked) > 100 {
			return walked
		}
		walked = append(walked, at)
		s.press(fyne.KeyTab)
	}
}

// The focus is somewhere on every screen that comes to the front: a clerk who types is heard.
func TestEveryScreenHasTheKeyboard(t *testing.T) {
	for _, loads := range []int{0, 40} {
		s := newScene(t, shell.Look{}, loads)
		for i, row := range Screens {
			s.Go(row.ID)
			if at := s.Screens[i].FocusOrder().Current(); at == "" {
				t.Errorf("with %d loads, nothing on screen %s has the keyboard", loads, row.ID)
			}
		}
	}
}
