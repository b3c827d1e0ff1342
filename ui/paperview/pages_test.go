package paperview

import (
	"bytes"
	"image/png"
	"os"
	"testing"

	"tenthpoint/internal/scaleticket"
	"tenthpoint/internal/scaleticket/sheet"
	"tenthpoint/internal/tickettest"
	"tenthpoint/ui/apptheme"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
)

func TestZZ(t *testing.T) {
	test.NewTempApp(t)
	test.ApplyTheme(t, apptheme.NewTheme(false, apptheme.TextOrdinary))
	for _, name := range []string{"corn", "void", "preview"} {
		v := NewSlipView()
		v.SetPages(sheet.Layout(scaleticket.Compose(tickettest.Named(t, name)), sheet.HalfLetter, sheet.Options{}))
		w := test.NewWindow(v)
		w.SetPadded(false)
		w.Resize(fyne.NewSize(460, 760))
		var b bytes.Buffer
		png.Encode(&b, w.Canvas().Capture())
		os.WriteFile("/tmp/shots/pages-"+name+".png", b.Bytes(), 0o644)
		w.Close()
	}
}
