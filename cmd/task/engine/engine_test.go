package engine

import (
	"os"
	"path/filepath"
	"testing"
)

// root is the repository.
const root = "../../.."

// TestEngineIsCurrent holds the engine in the repository to its source, by the sum of all it is made
// of; `go run ./cmd/task check` makes it anew before it tests.
func TestEngineIsCurrent(t *testing.T) {
	stale, err := Stale(root)
	if err != nil {
		t.Fatal(err)
	}
	if stale {
		t.Error("the engine of the checker's page is behind its source; run `go run ./cmd/task checker`")
	}
}

// TestSumSeesEveryPart changes each part in turn: the sum is another.
func TestSumSeesEveryPart(t *testing.T) {
	parts, err := inputs(root)
	if err != nil {
		t.Fatal(err)
	}
	whole := sumOf(parts)
	seen := map[string]bool{}
	for i := range parts {
		seen[parts[i].name] = true
		kept := parts[i].data
		parts[i].data = append([]byte("x"), kept...)
		if sumOf(parts) == whole {
			t.Errorf("%s may change unseen", parts[i].name)
		}
		parts[i].data = kept
	}
	for _, needed := range []string{"tenthpoint/internal/settle/engine.go", "tenthpoint/internal/slipcode/read.go", "tenthpoint/schedules/law/first.txt", "github.com/makiuchi-d/gozxing", "flags"} {
		if !seen[needed] {
			t.Errorf("%s is not among the parts", needed)
		}
	}
}

// TestTextsOf finds texts in source and rules.
func TestTextsOf(t *testing.T) {
	got, err := textsOf([]part{
		{"a.go", []byte("package a\nvar a = New(\"one \"+\n\t\"two\", `three`, 4)\n")},
		{"b.toml", []byte("name = \"Vitreous kernels\"\n")},
		{"c.txt", []byte(`"not this"`)},
	})
	const want = "[\n \"Vitreous kernels\",\n \"one two\",\n \"three\"\n]"
	if err != nil || string(got) != want {
		t.Errorf("%s, %v, want %s", got, err, want)
	}
}

// TestEngineIsSmall keeps the page below 3.5 MB: base64 makes three bytes four.
func TestEngineIsSmall(t *testing.T) {
	info, err := os.Stat(filepath.Join(root, folder, wasmFile))
	if err != nil {
		t.Fatal(err)
	}
	if size := info.Size() * 4 / 3; size > 3_350_000 {
		t.Errorf("the engine takes %d bytes of a page of 3.5 MB", size)
	}
}
