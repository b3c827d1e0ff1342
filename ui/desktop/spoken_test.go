package desktop

import (
	"slices"
	"testing"

	"tenthpoint/ui/shell"
	"tenthpoint/ui/widgets"
)

// Every widget of every screen says what it is, a field and a button also what they are called, in the
// order in which Tab goes: what a reader of screens would read out.
func TestEveryWidgetSpeaks(t *testing.T) {
	s := newScene(t, shell.Look{}, 40)
	for i, row := range Screens {
		s.Go(row.ID)
		if row.ID == "yard" {
			s.letCornBeTyped()
		}
		order := s.Screens[i].FocusOrder()
		var read []string
		for _, one := range order.Spoken() {
			read = append(read, one.ID)
			named := one.Role == widgets.EntryRole || one.Role == widgets.FindRole || one.Role == widgets.TickRole || one.Role == widgets.ButtonRole || one.Role == widgets.PictureRole
			switch {
			case one.Role == "":
				t.Errorf("screen %s: %s does not say what it is", row.ID, one.ID)
			case named && one.Name == "":
				t.Errorf("screen %s: the %s %s has no name", row.ID, one.Role, one.ID)
			}
		}
		walked := s.walk(i)
		inOrder := slices.DeleteFunc(slices.Clone(read), func(id string) bool { return !slices.Contains(walked, id) })
		if start := slices.Index(inOrder, walked[0]); start < 0 || !slices.Equal(append(inOrder[start:], inOrder[:start]...), walked) {
			t.Errorf("screen %s is read as %v and walked as %v", row.ID, read, walked)
		}
	}
}

// A field says the value it holds.
func TestAFieldSpeaksItsValue(t *testing.T) {
	s := newScene(t, shell.Look{}, 40)
	s.letCornBeTyped()
	spoken := map[string]widgets.Spoken{}
	for _, one := range s.focusOrder("yard").Spoken() {
		spoken[one.ID] = one
	}
	for id, want := range map[string]widgets.Spoken{
		"gross":     {ID: "gross", Name: "Gross", Role: widgets.EntryRole, Value: "52,300"},
		"commodity": {ID: "commodity", Name: "Commodity", Role: widgets.FindRole, Value: "corn  Corn"},
		"issue":     {ID: "issue", Name: "Issue and print", Role: widgets.ButtonRole},
	} {
		if spoken[id] != want {
			t.Errorf("%s says %+v, want %+v", id, spoken[id], want)
		}
	}
}
