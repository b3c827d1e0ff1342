package printing

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"sort"
	"strings"
	"sync"
	"tenthpoint/internal/message"
	"tenthpoint/internal/message/errortest"
	"testing"
)

func namesIn(t *testing.T, folder string) []string {
	t.Helper()
	entries, err := os.ReadDir(folder)
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, e := range entries {
		names = append(names, e.Name())
	}
	return names
}

func TestFolderNeverOverwrites(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "slips", "today")
	for i, want := range []string{"ticket-1042.pdf", "ticket-1042-2.pdf", "ticket-1042-3.pdf"} {
		job := slip()
		job.Bytes = fmt.Appendf(nil, "copy %d", i)
		receipt, err := Folder{Path: folder}.Send(t.Context(), job)
		if err != nil {
			t.Fatal(err)
		}
		if receipt != (Receipt{Where: filepath.Join(folder, want), Copies: 1, Certain: true}) {
			t.Errorf("receipt %+v, want file %s", receipt, want)
		}
	}
	for i, name := range []string{"ticket-1042.pdf", "ticket-1042-2.pdf", "ticket-1042-3.pdf"} {
		got, err := os.ReadFile(filepath.Join(folder, name))
		if want := fmt.Sprintf("copy %d", i); err != nil || string(got) != want {
			t.Errorf("%s holds %q, %v; want %q", name, got, err, want)
		}
	}
}

// Sixteen desks print the same name into one folder: each gets a file of its
// own with its own bytes, and no part-file is left.
func TestFolderSharedByManyDesks(t *testing.T) {
	folder, desks := t.TempDir(), 16
	var wg sync.WaitGroup
	for n := range desks {
		wg.Go(func() {
			job := slip()
			job.Bytes = bytes.Repeat([]byte{byte('a' + n)}, 5000)
			if _, err := (Folder{Path: folder}).Send(context.Background(), job); err != nil {
				t.Error(err)
			}
		})
	}
	wg.Wait()
	var seen []string
	for _, name := range namesIn(t, folder) {
		content, err := os.ReadFile(filepath.Join(folder, name))
		if err != nil || len(content) != 5000 || strings.Trim(string(content), string(content[:1])) != "" {
			t.Fatalf("%s is not one desk's whole file (%d bytes, %v)", name, len(content), err)
		}
		seen = append(seen, string(content[:1]))
	}
	sort.Strings(seen)
	if got := strings.Join(seen, ""); got != "abcdefghijklmnop" {
		t.Errorf("files of desks %q, want one of each of 16", got)
	}
}

func TestFolderTellsWhatIsWrongAndLeavesNothing(t *testing.T) {
	parent := t.TempDir()
	file := filepath.Join(parent, "a-file")
	if err := os.WriteFile(file, []byte("mine"), 0o644); err != nil {
		t.Fatal(err)
	}
	cancelled, cancel := context.WithCancel(t.Context())
	cancel()
	tests := []struct {
		name, path string
		want       error
		ctx        context.Context
		job        Job
	}{
		{"no folder set", "", message.Incomplete, t.Context(), slip()},
		{"folder is a file", file, message.Storage, t.Context(), slip()},
		{"bad job", parent, message.Invalid, t.Context(), Job{Name: "x", MIME: PDF, Copies: 1}},
		{"cancelled", parent, context.Canceled, cancelled, slip()},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			receipt, err := Folder{Path: tt.path}.Send(tt.ctx, tt.job)
			if !errors.Is(err, tt.want) {
				t.Errorf("error %v, want one that is %q", err, tt.want)
			}
			if receipt != (Receipt{}) {
				t.Errorf("a failed job has the receipt %+v", receipt)
			}
			if got := namesIn(t, parent); len(got) != 1 || got[0] != "a-file" {
				t.Errorf("folder now holds %q, want only a-file", got)
			}
		})
	}
}

func TestFolderGivesUpOnEndlessNames(t *testing.T) {
	folder := t.TempDir()
	for n := 1; n <= mostSameNames; n++ {
		if err := os.WriteFile(filepath.Join(folder, numbered("ticket-1042", n)+".pdf"), nil, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	_, err := Folder{Path: folder}.Send(t.Context(), slip())
	if !errortest.Kind(message.Storage, "ticket-1042", "999").Met(err) {
		t.Errorf("error %v, want the count of files", err)
	}
	if got := len(namesIn(t, folder)); got != mostSameNames {
		t.Errorf("folder holds %d files, want %d: a part-file stayed behind", got, mostSameNames)
	}
}
