//go:build unix

package printing

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"tenthpoint/internal/message"
	"tenthpoint/internal/message/errortest"
	"testing"
)

// fakeProgram puts a shell script called name alone in PATH. The script notes
// its arguments, one a line, and its input in the folder returned.
func fakeProgram(t *testing.T, name, body string) (notes string) {
	t.Helper()
	notes = t.TempDir()
	bin := t.TempDir()
	script := "#!/bin/sh\nPATH=/bin:/usr/bin\nprintf '%s\\n' \"$@\" > '" + notes + "/args'\n" + body + "\n"
	if err := os.WriteFile(filepath.Join(bin, name), []byte(script), 0o755); err != nil {
		t.Fatal(err)
	}
	t.Setenv("PATH", bin)
	return notes
}

func noted(t *testing.T, notes, name string) string {
	t.Helper()
	content, err := os.ReadFile(filepath.Join(notes, name))
	if err != nil {
		t.Fatal(err)
	}
	return string(content)
}

func TestSystemPrintsThroughLp(t *testing.T) {
	notes := fakeProgram(t, "lp", `cat > "$(dirname "$0")/in"; echo "request id is front-12 (0 file(s))"; echo "$LC_ALL" >&2`)
	job := slip()
	job.Copies = 2
	receipt, err := System{Printer: "front", Options: []string{"media=A5"}, OS: "linux"}.Send(t.Context(), job)
	if err != nil {
		t.Fatal(err)
	}
	if receipt != (Receipt{Where: "front-12", Copies: 2, Certain: true}) {
		t.Errorf("receipt %+v, want request front-12 with 2 copies", receipt)
	}
	if got, want := noted(t, notes, "args"), "-n\n2\n-t\nticket-1042\n-d\nfront\n-o\nmedia=A5\n"; got != want {
		t.Errorf("lp was called with %q, want %q", got, want)
	}
	if got := noted(t, os.Getenv("PATH"), "in"); got != string(job.Bytes) {
		t.Errorf("lp was given %q, want %q", got, job.Bytes)
	}
}

func TestSystemFallsBackToLpr(t *testing.T) {
	notes := fakeProgram(t, "lpr", `cat > /dev/null`)
	job := slip()
	job.Copies = 3
	receipt, err := System{Printer: "roll", OS: "linux"}.Send(t.Context(), job)
	if err != nil || receipt.Where != "roll" {
		t.Errorf("receipt %+v, %v; want the printer's name, as lpr gives no id", receipt, err)
	}
	if got, want := noted(t, notes, "args"), "-#3\n-J\nticket-1042\n-P\nroll\n"; got != want {
		t.Errorf("lpr was called with %q, want %q", got, want)
	}
}

func TestSystemRepeatsThePrintersWords(t *testing.T) {
	fakeProgram(t, "lp", `echo 'lp: The printer or class does not exist.' >&2; exit 1`)
	_, err := System{Printer: "frnt", OS: "linux"}.Send(t.Context(), slip())
	for _, want := range []errortest.Want{errortest.Device("ticket-1042", "frnt"), errortest.Device(), errortest.Device(), errortest.Device()} {
		if !want.Met(err) {
			t.Errorf("error %v lacks %q", err, want)
		}
	}
}

func TestSystemKeepsOnlySomeOfAFlood(t *testing.T) {
	fakeProgram(t, "lp", `head -c 100000 /dev/zero | tr '\0' x; exit 1`)
	_, err := System{OS: "linux"}.Send(t.Context(), slip())
	if err == nil || len(err.Error()) > mostOutput+500 || len(err.Error()) < mostOutput {
		t.Errorf("a flood of words made an error of %d letters, want about %d", len(err.Error()), mostOutput)
	}
}

func TestSystemStopsWhenCancelled(t *testing.T) {
	notes := fakeProgram(t, "lp", `kill -STOP $$`)
	ctx, cancel := context.WithCancel(t.Context())
	go func() { // cancel once lp is known to run
		for ctx.Err() == nil {
			if _, err := os.Stat(filepath.Join(notes, "args")); err == nil {
				cancel()
				return
			}
			runtime.Gosched()
		}
	}()
	_, err := System{OS: "linux"}.Send(ctx, slip())
	if !errors.Is(err, context.Canceled) {
		t.Errorf("error %v, want it to say the job was cancelled", err)
	}
}

func TestSystemWithoutAnyPrintCommand(t *testing.T) {
	t.Setenv("PATH", t.TempDir())
	_, err := System{OS: "linux"}.Send(t.Context(), slip())
	if !errortest.Device().Met(err) || !errortest.Device().Met(err) {
		t.Errorf("error %v, want the missing commands and what to type", err)
	}
}

func TestSystemRefusesSettingsThatAreFlags(t *testing.T) {
	notes := fakeProgram(t, "lp", "")
	_, err := System{Printer: "-h evil", Options: []string{"a\nb"}, OS: "linux"}.Send(t.Context(), slip())
	if !errors.Is(err, message.Device) || len(message.Lines(err)) != 2 {
		t.Errorf("error %v, want both settings refused", err)
	}
	if got := namesIn(t, notes); len(got) != 0 {
		t.Errorf("lp was run all the same: %q", got)
	}
}

func TestWindowsNamesNeverEnterTheScript(t *testing.T) {
	const path, printer = `C:\slips\it's "1042" & co.pdf`, `Front '; rm`
	for _, mime := range []string{PDF, Text} {
		job := slip()
		job.MIME, job.Copies = mime, 2
		c := System{Printer: printer}.powershell(job, path)
		script := c.args[len(c.args)-1]
		if strings.Contains(script, "1042") || strings.Contains(script, "Front") {
			t.Errorf("%s: a name became part of the script: %s", mime, script)
		}
		if !slices.Contains(c.env, fileVar+"="+path) || !slices.Contains(c.env, printerVar+"="+printer) {
			t.Errorf("%s: names are not in the environment: %q", mime, c.env)
		}
		if !strings.Contains(script, "1..2") {
			t.Errorf("%s: two copies are not asked for: %s", mime, script)
		}
	}
}

func TestWindowsSendKeepsTheFileAndIsHonest(t *testing.T) {
	for _, tt := range []struct {
		mime, verb string
		certain    bool
	}{
		{PDF, "-Verb Print ", false},
		{Text, "Out-Printer", true},
	} {
		notes := fakeProgram(t, "powershell", `cat "$TENTHPOINT_PRINT_FILE" > "$(dirname "$0")/file"`)
		job, keep := slip(), t.TempDir()
		job.MIME = tt.mime
		receipt, err := System{Keep: keep, OS: "windows"}.Send(t.Context(), job)
		if err != nil {
			t.Fatal(err)
		}
		if filepath.Dir(receipt.Where) != keep || receipt.Certain != tt.certain {
			t.Errorf("%s: receipt %+v, want a file in %s, certain %v", tt.mime, receipt, keep, tt.certain)
		}
		if got := noted(t, os.Getenv("PATH"), "file"); got != string(job.Bytes) {
			t.Errorf("%s: powershell found the file holding %q", tt.mime, got)
		}
		if got := noted(t, notes, "args"); !strings.Contains(got, tt.verb) {
			t.Errorf("%s: script %q lacks %q", tt.mime, got, tt.verb)
		}
	}
}
