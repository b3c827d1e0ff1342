package page

import (
	"bytes"
	"context"
	"image/png"
	"os"
	"path/filepath"
	"testing"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"

	"tenthpoint/internal/tickettest"
)

// TestShots takes pictures of a checked ticket on a phone and on a desk. With TENTHPOINT_SHOTS set to
// a folder they are kept there.
func TestShots(t *testing.T) {
	corn := tickettest.Corn(t)
	_, computer, _ := keys(t)
	for name, width := range map[string]int64{"check-phone": 390, "check-desk": 1100} {
		screen := func(ctx context.Context, tab *chromedp.Target) (v chromedp.Void, err error) {
			_, err = cdp.Call(ctx, tab, emulation.SetDeviceMetricsOverride, emulation.SetDeviceMetricsOverrideParams{Width: width, Height: 1300, DeviceScaleFactor: 1, Mobile: width < 600})
			return v, err
		}
		b := opened(t, posted(t, corn), screen)
		b.told(signedText(t, corn, computer))
		evaluated[bool](b, `{ document.getElementById("checked").scrollIntoView(); true }`)
		shot, err := chromedp.Run(b, chromedp.CaptureScreenshot())
		if err != nil {
			t.Fatal(err)
		}
		if picture, err := png.DecodeConfig(bytes.NewReader(shot)); err != nil || picture.Width != int(width) {
			t.Errorf("%s is %d pixels wide: %v", name, picture.Width, err)
		}
		if folder := os.Getenv("TENTHPOINT_SHOTS"); folder != "" {
			if err := os.WriteFile(filepath.Join(folder, name+".png"), shot, 0o644); err != nil {
				t.Error(err)
			}
		}
	}
}
