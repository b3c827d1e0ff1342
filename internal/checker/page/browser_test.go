package page

import (
	"bytes"
	"context"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"net/http"
	"net/http/httptest"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"

	"tenthpoint/internal/checker"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scaleticket"
	"tenthpoint/internal/scaleticket/barcode"
	"tenthpoint/internal/signing"
	"tenthpoint/internal/slipcode"
	"tenthpoint/internal/tickettest"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
	"golang.org/x/image/draw"
)

// keys are the keys of an invented house and of another.
func keys(t testing.TB) (house, computer, foreign signing.Key) {
	t.Helper()
	var all [3]signing.Key
	for i := range all {
		k, err := signing.NewKey(bytes.NewReader(bytes.Repeat([]byte{byte(i + 1)}, 32)))
		if err != nil {
			t.Fatal(err)
		}
		all[i] = k
	}
	return all[0], all[1], all[2]
}

// posted is the page's house, with the rates of a ticket.
func posted(t testing.TB, tickets ...scaleticket.Ticket) checker.House {
	t.Helper()
	house, computer, _ := keys(t)
	h := checker.House{Business: "Example Prairie Elevator", Demo: true, Keys: []signing.Public{house.Public()},
		Computers: []signing.Computer{{Certificate: house.Certify("scale house", computer.Public())}}}
	seen := map[string]bool{}
	for _, ticket := range tickets {
		if e := ticket.Settlement.Edition; !seen[e.Hash] {
			seen[e.Hash] = true
			h.Editions = append(h.Editions, checker.File{Name: e.ID + ".toml", Text: string(e.Text)})
		}
	}
	return h
}

// browser is a page of a house, opened from a disk.
type browser struct {
	context.Context
	t    testing.TB
	mu   sync.Mutex
	sent []string // what the page asked the network for
	said []string // what the browser complained of
}

// opened starts the browser of the system and opens the page of a house.
func opened(t testing.TB, h checker.House, before ...chromedp.Action[chromedp.Void]) *browser {
	t.Helper()
	file := filepath.Join(t.TempDir(), "check.html")
	var page bytes.Buffer
	if err := Write(&page, h); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(file, page.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	options := append(chromedp.DefaultExecAllocatorOptions[:], chromedp.NoSandbox, chromedp.Flag("lang", "en"))
	allocated, stop := chromedp.NewExecAllocator(context.Background(), options...)
	t.Cleanup(stop)
	ctx, closeTab := chromedp.NewContext(allocated)
	t.Cleanup(closeTab)
	ctx, cancel := context.WithTimeout(ctx, 20*time.Second)
	t.Cleanup(cancel)
	b := &browser{Context: ctx, t: t}
	address := url.URL{Scheme: "file", Path: file}
	b.do(before...)
	if err := chromedp.Listen(ctx, b.listen(address.String())); err != nil {
		t.Fatal(err)
	}
	if _, err := chromedp.Call(ctx, network.Enable, network.EnableParams{}); err != nil {
		t.Fatal(err)
	}
	b.do(chromedp.Navigate(address.String()))
	ready := `new Promise(done => { const look = () => document.getElementById("page")?.dataset.ready ? done(true) : setTimeout(look, 10); look(); })`
	evaluated[bool](b, ready)
	return b
}

// listen notes what the page asks of the network, and what goes wrong in it.
func (b *browser) listen(address string) func(any) {
	return func(event any) {
		b.mu.Lock()
		defer b.mu.Unlock()
		switch e := event.(type) {
		case *network.EventRequestWillBeSent:
			if e.Request.URL != address && !strings.HasPrefix(e.Request.URL, "data:") { // pictures of the browser's own
				b.sent = append(b.sent, e.Request.URL)
			}
		case *runtime.EventExceptionThrown:
			b.said = append(b.said, e.ExceptionDetails.Text)
		}
	}
}

func (b *browser) do(actions ...chromedp.Action[chromedp.Void]) {
	b.t.Helper()
	if err := chromedp.Do(b, actions...); err != nil {
		b.t.Fatalf("the browser: %v; it said %q", err, b.said)
	}
}

// evaluated is what an expression comes to within the page, or what it promises.
func evaluated[T any](b *browser, expression string) T {
	b.t.Helper()
	v, err := chromedp.Run(b, chromedp.Evaluate[T](expression, chromedp.EvalAwaitPromise))
	if err != nil {
		b.t.Fatalf("the browser: %v; it said %q", err, b.said)
	}
	return v
}

// shown is the text of a part of the page.
func (b *browser) shown(selector string) string {
	b.t.Helper()
	text := evaluated[string](b, fmt.Sprintf("document.querySelector(%q).innerText", selector))
	if strings.Contains(text, "%!") {
		b.t.Errorf("a figure is printed without its place: %.1500s", text)
	}
	return text
}

// told returns the text that the page shows for a code.
func (b *browser) told(text string) string {
	b.t.Helper()
	evaluated[bool](b, fmt.Sprintf(`document.getElementById("text").value = %q; true`, text))
	b.do(chromedp.Click(`#paste button`), chromedp.WaitReady(`#checked[data-ready]`))
	return b.shown("#checked")
}

// photo is a picture of a square as somebody takes it, and its name on the disk.
func photo(t testing.TB, text string) string {
	t.Helper()
	square, err := barcode.Square(text)
	if err != nil {
		t.Fatal(err)
	}
	const each, quiet = 6, 40
	b := square.Bounds()
	img := image.NewRGBA(image.Rect(0, 0, b.Dx()*each+2*quiet, b.Dy()*each+2*quiet))
	draw.Draw(img, img.Rect, image.NewUniform(color.Gray{Y: 235}), image.Point{}, draw.Src)
	draw.NearestNeighbor.Scale(img, image.Rect(quiet, quiet, quiet+b.Dx()*each, quiet+b.Dy()*each), square, b, draw.Src, nil)
	var file bytes.Buffer
	if err := png.Encode(&file, img); err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "photo.png")
	if err := os.WriteFile(path, file.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

// signedText is the square of a ticket, signed by the computer of the house.
func signedText(t testing.TB, ticket scaleticket.Ticket, by signing.Key) string {
	t.Helper()
	ticket.Key = by
	q, ok := scaleticket.QR(scaleticket.Compose(ticket))
	if !ok || q.Code == nil || q.Code.Signature == nil {
		t.Fatalf("the square is not signed: %q", q.Text)
	}
	return q.Text
}

// forged changes the first line of a signed code.
func forged(t testing.TB, text string) string {
	t.Helper()
	c, err := slipcode.Parse(text)
	if err != nil {
		t.Fatal(err)
	}
	c.Lines[0].Figure = c.Lines[0].Figure.Add(quantity.Of("100", quantity.Plain))
	out, err := c.Text()
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// TestPageInABrowser opens the page from a disk, reads pictures of squares and texts of every sort, and
// sees that nothing leaves.
func TestPageInABrowser(t *testing.T) {
	corn, shares, tonnes, unknown := tickettest.Corn(t), tickettest.Shares(t), tickettest.Tonnes(t), tickettest.Named(t, "weight-deductions")
	_, computer, foreign := keys(t)
	b := opened(t, posted(t, corn, shares, tonnes))
	for _, ticket := range []scaleticket.Ticket{corn, shares, tonnes} {
		evaluated[bool](b, `{ const c = document.getElementById("checked"); c.innerHTML = ""; delete c.dataset.ready; true }`)
		b.do(chromedp.SetUploadFiles(`#photo`, []string{photo(t, signedText(t, ticket, computer))}), chromedp.WaitReady(`#checked[data-ready]`))
		shown := b.shown("#checked")
		payable := ticket.Settlement.Payable.Printed()
		for _, want := range []string{"Signed by Example Prairie Elevator", "Every line is the same", payable, "The whole working", "the pure water formula"} {
			if !strings.Contains(shown, want) {
				t.Errorf("ticket %d from its picture: nothing says %q:\n%.1500s", ticket.Load.Number, want, shown)
			}
		}
	}
	text := signedText(t, corn, computer)
	old := tickettest.Corn(t)
	old.Load.SlipCode = 0
	older, _ := scaleticket.QR(scaleticket.Compose(old))
	for what, c := range map[string]struct{ text, want string }{
		"a forged figure":     {forged(t, text), "The signature is false"},
		"a foreign key":       {signedText(t, corn, foreign), "Signed by a key that is not this elevator's"},
		"an unknown edition":  {signedText(t, unknown, computer), "The rates of this ticket are not in this page"},
		"a torn code":         {text[:len(text)/2], "torn or was misread"},
		"an old format":       {older.Text, "This slip has the older code"},
		"a newer format":      {"TP7" + text[3:], "format 7"},
		"nothing":             {" ", "No square was found"},
		"no code of a ticket": {"https://example.invalid", "not from a ticket"},
	} {
		if shown := b.told(c.text); !strings.Contains(shown, c.want) {
			t.Errorf("%s: nothing says %q:\n%.600s", what, c.want, shown)
		}
	}
	if shown := b.told(forged(t, text)); !strings.Contains(shown, "1 line differs") || strings.Contains(shown, "Every line is the same") {
		t.Errorf("a forged figure is not told line by line:\n%.900s", shown)
	}
	if len(b.sent)+len(b.said) > 0 {
		t.Errorf("the page asked for %q; the browser said %q", b.sent, b.said)
	}
}

// TestNothingMayLeave tries to send something from within the page: the policy stops it.
func TestNothingMayLeave(t *testing.T) {
	b := opened(t, checker.House{})
	var asked atomic.Int64
	server := httptest.NewServer(http.HandlerFunc(func(http.ResponseWriter, *http.Request) { asked.Add(1) }))
	defer server.Close()
	for what, script := range map[string]string{
		"a fetch":   `fetch("%s").then(() => true, () => true)`,
		"a picture": `new Promise(done => { const i = new Image(); i.onload = i.onerror = () => done(true); i.src = "%s/x.png"; })`,
		"a beacon":  `navigator.sendBeacon("%s", "x"); new Promise(done => setTimeout(() => done(true), 300))`,
		"a form":    `{ const f = document.createElement("form"); f.action = "%s"; document.body.append(f); f.submit(); new Promise(done => setTimeout(() => done(true), 300)) }`,
	} {
		evaluated[bool](b, strings.Replace(script, "%s", server.URL, 1))
		if n := asked.Load(); n > 0 {
			t.Errorf("%s left the page: %d requests came", what, n)
		}
	}
	if evaluated[bool](b, `{ const s = document.createElement("script"); s.textContent = "window.slippedIn = true"; document.body.append(s); !!window.slippedIn }`) {
		t.Error("a script from elsewhere ran")
	}
}

// slowPhone is a narrow screen and a processor slowed four times.
func slowPhone(ctx context.Context, t *chromedp.Target) (v chromedp.Void, err error) {
	if _, err = cdp.Call(ctx, t, emulation.SetCPUThrottlingRate, emulation.SetCPUThrottlingRateParams{Rate: 4}); err != nil {
		return v, err
	}
	_, err = cdp.Call(ctx, t, emulation.SetDeviceMetricsOverride, emulation.SetDeviceMetricsOverrideParams{Width: 320, Height: 640, DeviceScaleFactor: 2, Mobile: true})
	return v, err
}

// TestOnAPhone checks a code, in the page of a house with many editions, on a narrow screen and a slow processor. How long it took is told: a
// busy machine would be blamed for the page.
func TestOnAPhone(t *testing.T) {
	corn := tickettest.Corn(t)
	_, computer, _ := keys(t)
	h := posted(t, corn)
	files, err := filepath.Glob("../../../schedules/editions/*.toml")
	if err != nil || len(files) == 0 {
		t.Fatal("no editions are shipped", err)
	}
	for _, f := range files {
		text, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		h.Editions = append(h.Editions, checker.File{Name: filepath.Base(f), Text: string(text)})
	}
	b := opened(t, h, slowPhone)
	b.told(signedText(t, corn, computer))
	took := evaluated[int](b, `Math.round(performance.getEntriesByName("told")[0].startTime)`)
	t.Logf("the first result after %d ms on a processor slowed four times", took)
	width := evaluated[int](b, `document.documentElement.scrollWidth`)
	if width > 320 {
		t.Errorf("the page is %d pixels wide on a phone of 320", width)
	}
}

// TestCalculator types weight and moisture, without a ticket.
func TestCalculator(t *testing.T) {
	corn := tickettest.Corn(t)
	b := opened(t, posted(t, corn))
	b.do(chromedp.WaitReady(`#rest[data-ready]`))
	b.do(chromedp.SendKeys(`#boxes input[name=gross]`, "80120"), chromedp.SendKeys(`#boxes input[name=tare]`, "27,820"),
		chromedp.SendKeys(`#boxes input[name=moisture]`, "18.4"), chromedp.SendKeys(`#boxes input[name="factor.test-weight"]`, "56"), chromedp.SendKeys(`#boxes input[name="said.settled"]`, "49,946"), chromedp.Click(`#typed button`))
	shown := b.shown("#worked")
	for _, want := range []string{"52,300 lb", "891.89 bu", "same"} {
		if !strings.Contains(shown, want) {
			t.Errorf("nothing says %q:\n%.1200s", want, shown)
		}
	}
	evaluated[bool](b, `{ const l = document.getElementById("language"); l.value = "fr"; l.dispatchEvent(new Event("change")); true }`)
	shown = b.shown("h1")
	if !strings.Contains(shown, "Vérifier un bon de pesée") {
		t.Errorf("in French the page is headed %q", shown)
	}
}
