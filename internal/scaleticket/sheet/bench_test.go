package sheet

import (
	"compress/zlib"
	"io"
	"testing"
	"time"

	"tenthpoint/internal/fonts"
	"tenthpoint/internal/paper/pdf"
	"tenthpoint/internal/scaleticket"
	"tenthpoint/internal/tickettest"
)

func BenchmarkText(b *testing.B) {
	d := scaleticket.Compose(tickettest.Corn(b))
	for b.Loop() {
		_ = Text(d, RollColumns)
	}
}

// againstFloor reports the ratio of a turn's time to that of packing the fonts of a slip once: the
// least cost of a slip before packed fonts were cached. It is measured in the same run, so that a
// busy machine slows both.
func againstFloor(b *testing.B, turn time.Duration) {
	b.Helper()
	least := time.Hour
	for range 20 {
		began := time.Now()
		w := zlib.NewWriter(io.Discard)
		for _, font := range [][]byte{fonts.Regular, fonts.Bold} {
			if _, err := w.Write(font); err != nil {
				b.Fatal(err)
			}
		}
		if err := w.Close(); err != nil {
			b.Fatal(err)
		}
		least = min(least, time.Since(began))
	}
	b.ReportMetric(float64(turn)/float64(least), "floors")
}

func BenchmarkPDF(b *testing.B) {
	d := scaleticket.Compose(tickettest.Corn(b))
	b.ReportAllocs()
	for b.Loop() {
		if err := PDF(io.Discard, d, HalfLetter, Options{}); err != nil {
			b.Fatal(err)
		}
	}
	againstFloor(b, b.Elapsed()/time.Duration(b.N))
}

// BenchmarkPDFSqueezed is a slip that is laid out five times before it fits.
func BenchmarkPDFSqueezed(b *testing.B) {
	d := scaleticket.Compose(tickettest.Split(b))
	b.ReportAllocs()
	for b.Loop() {
		if err := PDF(io.Discard, d, HalfLetter, Options{}); err != nil {
			b.Fatal(err)
		}
	}
	againstFloor(b, b.Elapsed()/time.Duration(b.N))
}

// BenchmarkSlipOfMany is one slip in a file of many.
func BenchmarkSlipOfMany(b *testing.B) {
	d := scaleticket.Compose(tickettest.Corn(b))
	file := pdf.Begin(io.Discard)
	b.ReportAllocs()
	for b.Loop() {
		clear(codes.kept) // each ticket has a code of its own
		file.Add(Layout(d, HalfLetter, Options{}))
	}
	if err := file.Close(); err != nil {
		b.Fatal(err)
	}
	againstFloor(b, b.Elapsed()/time.Duration(b.N))
}

// BenchmarkPreview is a clerk's keystroke: a slip composed and set.
func BenchmarkPreview(b *testing.B) {
	ticket := tickettest.Preview(b)
	for b.Loop() {
		Layout(scaleticket.Compose(ticket), HalfLetter, Options{})
	}
}

// TestSlipIsCheapToPrint bounds what a slip may allocate, which a busy machine does
// not change: the whole of it 8 MB, and one in a file of many a tenth of that.
func TestSlipIsCheapToPrint(t *testing.T) {
	d := scaleticket.Compose(tickettest.Corn(t))
	if err := PDF(io.Discard, d, HalfLetter, Options{}); err != nil { // the fonts are packed once
		t.Fatal(err)
	}
	alone := testing.Benchmark(func(b *testing.B) {
		for b.Loop() {
			if err := PDF(io.Discard, d, HalfLetter, Options{}); err != nil {
				b.Fatal(err)
			}
		}
	})
	ofMany := testing.Benchmark(func(b *testing.B) {
		file := pdf.Begin(io.Discard)
		for b.Loop() {
			file.Add(Layout(d, HalfLetter, Options{}))
		}
	})
	if got := alone.AllocedBytesPerOp(); got > 8<<20 {
		t.Errorf("a slip allocates %d bytes", got)
	}
	if got := ofMany.AllocedBytesPerOp(); got > 800<<10 {
		t.Errorf("a slip of many allocates %d bytes", got)
	}
}
