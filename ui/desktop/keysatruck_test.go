package desktop

import (
	"context"
	"testing"

	"fyne.io/fyne/v2"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/session"
	"tenthpoint/ui/shell"
	"tenthpoint/ui/widgets"
)

// hand counts the keys it presses; a chord is one.
type hand struct {
	*scene
	keys int
}

func (h *hand) types(letters string) *hand {
	h.letters(letters)
	h.keys += len(letters)
	return h
}

func (h *hand) hits(keys ...fyne.KeyName) *hand {
	h.press(keys...)
	h.keys += len(keys)
	return h
}

func (h *hand) chord(key widgets.Key) *hand {
	h.UI.Chord(key)
	h.keys++
	return h
}

// line is a scale that shows one weight after another; the last one stays.
type line struct{ weights []int64 }

func (l *line) Latest() (session.Display, error) {
	return session.Display{Weight: quantity.Int(l.weights[0], quantity.Lb)}, nil
}

func (l *line) Weigh(context.Context) (quantity.Amount, error) {
	display, err := l.Latest()
	l.weights = l.weights[1:]
	return display.Weight, err
}

// openForHands is a yard without trucks, on which grower 123 sold corn at the posted price before. Of
// his truck a tare is stored.
func openForHands(t *testing.T) *hand {
	s := newScene(t, shell.Look{}, 40)
	ctx := t.Context()
	here, err := office.Yard(ctx, s.desk)
	must(t, err)
	for _, l := range here {
		must(t, scalehouse.Refuse(ctx, s.desk, l.ID, "cleared for the test"))
	}
	must(t, scalehouse.PostPrice(ctx, s.desk, elevator.PostedPrice{Commodity: "corn", Day: s.desk.Today(), Price: quantity.Of("4.16", quantity.DollarsPerBu)}))
	tare := quantity.Int(24120, quantity.Lb)
	must(t, scalehouse.SetTruck(ctx, s.desk, elevator.Truck{ID: "23", Grower: "123", Tare: &tare, Taken: s.desk.Today().AddDays(-12)}))
	s.Session.Changed()
	s.Commands.Run("load.new")
	s.come("123", "corn", "23")
	s.write("49960", "15.8")
	yardOf(s.Window).FocusOrder().Focus("bin")
	s.write("B1")
	yardOf(s.Window).FocusOrder().Focus("price")
	s.write("p")
	s.Commands.Run("load.tare")
	h := &hand{scene: s}
	h.issued("the load before", "49,960", 100)
	return h
}

// issued presses F12 and says whether a ticket came of it, sold at the posted price, and with how many
// keys since the last.
func (h *hand) issued(what, gross string, most int) {
	h.t.Helper()
	h.hits(fyne.KeyF12)
	last, found, err := office.LastLoad(context.Background(), h.desk, "123", "")
	must(h.t, err)
	w, weighed := last.Weight(load.Gross, "")
	if !found || last.Phase != load.Ticketed || !weighed || w.Weight.Figure() != gross || last.Details.PriceSource != "posted" {
		h.t.Fatalf("%s: no ticket of %s at the posted price; the status line says %q, the last is %+v", what, gross, h.Status.Text(), last.Details)
	}
	if h.keys > most {
		h.t.Errorf("%s takes %d keys, at most %d are allowed", what, h.keys, most)
	}
	h.t.Logf("%s: %d keys", what, h.keys)
	h.keys = 0
}

// A truck of a known grower whose grain is sold at the posted price, weighed by the indicator: his
// code, two weights by one key each, the moisture, the ticket. The trucks after it from the same field
// need no code.
func TestKeysATruckFromTheIndicator(t *testing.T) {
	h := openForHands(t)
	h.Session.Indicator = &line{[]int64{52300, 24120, 51880, 24100, 52620, 24140, 50980, 24160, 0}}
	h.types("123").hits(fyne.KeyF10).types("17.2").hits(fyne.KeyF10).issued("a known grower", "52,300", 12)
	for _, next := range []struct{ moisture, gross string }{{"16.9", "51,880"}, {"17.4", "52,620"}, {"17.1", "50,980"}} {
		h.chord(widgets.Ctrl(fyne.KeyE)).hits(fyne.KeyF10).types(next.moisture).hits(fyne.KeyF10).issued("the next truck in a row", next.gross, 8)
	}
}

// The same with every weight typed and the tare stored.
func TestKeysATruckWithTypedWeights(t *testing.T) {
	h := openForHands(t)
	h.chord(widgets.Ctrl(fyne.KeyE)).types("51880").hits(fyne.KeyReturn).types("16.9").chord(widgets.Ctrl(fyne.KeyT)).issued("the next truck in a row", "51,880", 13)
	last, _, err := office.LastLoad(t.Context(), h.desk, "123", "")
	must(t, err)
	if d := last.Details; d.Bin != "B1" || d.Commodity != "corn" || d.Truck.ID != "23" {
		t.Errorf("the next truck in a row has %+v", d)
	}
	h.types("123").hits(fyne.KeyReturn).types("52300").hits(fyne.KeyReturn).types("17.2").chord(widgets.Ctrl(fyne.KeyT)).issued("a known grower", "52,300", 17)
}
