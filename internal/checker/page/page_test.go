package page

import (
	"bytes"
	"compress/gzip"
	"io"
	"strings"
	"testing"

	"tenthpoint/internal/checker"
)

// TestEngineUnpacks reads the engine as a browser does, to its last byte.
func TestEngineUnpacks(t *testing.T) {
	r, err := gzip.NewReader(bytes.NewReader(engine))
	if err != nil {
		t.Fatal(err)
	}
	wasm, err := io.ReadAll(r)
	if err != nil || !bytes.HasPrefix(wasm, []byte("\x00asm")) {
		t.Errorf("the engine is %d bytes of something else, %v", len(wasm), err)
	}
}

// TestSameHouseSamePage makes the page twice; it holds every language, one policy, and less than 3.5 MB.
func TestSameHouseSamePage(t *testing.T) {
	var first, second bytes.Buffer
	for _, w := range []*bytes.Buffer{&first, &second} {
		if err := Write(w, checker.House{Business: "A </script> & Sons"}); err != nil {
			t.Fatal(err)
		}
	}
	if !bytes.Equal(first.Bytes(), second.Bytes()) || first.Len() >= 3_500_000 {
		t.Errorf("%d and %d bytes, the same: %v", first.Len(), second.Len(), bytes.Equal(first.Bytes(), second.Bytes()))
	}
	for text, times := range map[string]int{`data-languages="en es fr"`: 1, "connect-src 'none'": 1, "</script>": 4} {
		if got := strings.Count(first.String(), text); got != times {
			t.Errorf("%q stands %d times in the page, want %d", text, got, times)
		}
	}
}
