package widgets

import (
	"strings"
	"tenthpoint/ui/widgettest"
	"testing"

	"fyne.io/fyne/v2"
)

// One key does what the screen in front says, from the keyboard and from the
// menu, where a window takes the first item that has the chord.
func TestScreensShareKeys(t *testing.T) {
	newHouse(t)
	var ran, refused []string
	here := "yard"
	at := func(id, place string, keys ...Key) Command {
		return Command{ID: id, Title: id, Group: "All", Place: place, Keys: keys,
			EnabledWhen: func() bool { return place == "" || place == here },
			Do:          func() { ran = append(ran, id) }}
	}
	c, err := NewCommands(EnglishWords(),
		at("yard.issue", "yard", Bare(fyne.KeyF12), Ctrl(fyne.KeyS)),
		at("bench.write", "bench", Bare(fyne.KeyF12), Ctrl(fyne.KeyS)),
		at("back", "", Bare(fyne.KeyEscape)))
	if err != nil {
		t.Fatal(err)
	}
	c.At = func() string { return here }
	c.OnRefused = func(command Command, _ Outcome) { refused = append(refused, command.ID) }
	items := c.MainMenu().Items[0].Items
	everything := func() {
		c.TakeKey(&fyne.KeyEvent{Name: fyne.KeyF12})
		items[0].Action() // as a window does for Ctrl+S, on any screen
		c.TakeKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	}
	everything()
	here = "bench"
	everything()
	here = "rates"
	everything()
	widgettest.Equal(t, "ran", strings.Join(ran, " "), "yard.issue yard.issue back bench.write bench.write back back")
	widgettest.Equal(t, "refused", strings.Join(refused, " "), "yard.issue yard.issue")
}

func TestSharedKeysMustDifferInPlace(t *testing.T) {
	for name, places := range map[string][2]string{
		"one place":            {"yard", "yard"},
		"everywhere and there": {"", "yard"},
	} {
		_, err := NewCommands(EnglishWords(),
			Command{ID: "a", Title: "A", Do: nothing, Place: places[0], Keys: []Key{Ctrl(fyne.KeyS)}},
			Command{ID: "b", Title: "B", Do: nothing, Place: places[1], Keys: []Key{Ctrl(fyne.KeyS)}})
		if err == nil || !strings.Contains(err.Error(), "belongs to both") {
			t.Errorf("%s: %v", name, err)
		}
	}
}
