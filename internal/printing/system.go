package printing

import (
	"context"
	"errors"
	"fmt"
	"os/exec"
	"runtime"
	"strings"
	"unicode"

	"tenthpoint/internal/message"
)

// System hands jobs to the operating system's print queue.
//
// On Unix and macOS that is lp, or lpr where there is no lp; the bytes go in
// by standard input and no file is left behind. On Windows see printverb.go.
type System struct {
	Printer string   // the queue's name; empty means the computer's default
	Options []string // for lp -o and lpr -o, such as "media=A5"; not used on Windows
	Keep    string   // on Windows: the folder for files the print verb reads after Send returns
	OS      string   // a GOOS name; empty means the one this program runs on
}

// Send returns when the queue has taken the job. On Unix the receipt carries
// lp's request id where there is one. Nothing is tried twice: a job that may
// have been taken must not print a second ticket.
func (s System) Send(ctx context.Context, job Job) (Receipt, error) {
	if err := errors.Join(job.Check(), s.check(), ctx.Err()); err != nil {
		return Receipt{}, err
	}
	if orThisOS(s.OS) == "windows" {
		return s.sendWindows(ctx, job)
	}
	return s.sendUnix(ctx, job)
}

// check refuses settings that a print command would read as its own flags.
func (s System) check() error {
	var faults []error
	for _, word := range append([]string{s.Printer}, s.Options...) {
		if strings.HasPrefix(word, "-") || strings.ContainsFunc(word, unicode.IsControl) {
			faults = append(faults, message.Device.Errorf("The printer setting %q starts with a dash or holds a control character. Type the printer's name or option as the system lists it.", word))
		}
	}
	return errors.Join(faults...)
}

func (s System) sendUnix(ctx context.Context, job Job) (Receipt, error) {
	c, err := s.unixCommand(job)
	if err != nil {
		return Receipt{}, err
	}
	words, err := c.run(ctx)
	if err != nil {
		return Receipt{}, message.Device.Errorf("%q was not printed on %s: %w. Check that the printer is on and its name is right, or print to a folder.", job.Name, s.printerName(), err)
	}
	return Receipt{Where: s.requestID(words), Copies: job.Copies, Certain: true, Off: s.whyOff(ctx)}, nil
}

// whyOff asks the print system whether the printer prints. The queue keeps the job in
// any case; a driver who waits should know. No answer is no reason to worry.
func (s System) whyOff(ctx context.Context) string {
	words, err := command{name: "lpstat", args: s.lpstat(), env: []string{"LC_ALL=C"}}.run(ctx)
	if err != nil {
		return ""
	}
	return offIn(words)
}

func (s System) lpstat() []string {
	if s.Printer == "" {
		return []string{"-p"}
	}
	return []string{"-p", s.Printer}
}

// offIn finds the reason in lpstat's "printer front disabled since ... -\n\treason".
func offIn(words string) string {
	first, rest, _ := strings.Cut(words, "\n")
	if !strings.Contains(first, " disabled ") && !strings.Contains(rest, "offline") && !strings.Contains(rest, "Unplugged or turned off") {
		return ""
	}
	if reason, _, _ := strings.Cut(strings.TrimSpace(rest), "\n"); reason != "" {
		return reason
	}
	return strings.TrimSpace(first)
}

// unixCommand prefers lp: it answers with a request id.
func (s System) unixCommand(job Job) (command, error) {
	for _, c := range []command{s.lp(job), s.lpr(job)} {
		if _, err := exec.LookPath(c.name); err == nil {
			return c, nil
		}
	}
	return command{}, message.Device.Errorf("%q was not printed: neither lp nor lpr is on this computer. Install a print system (on Debian or Ubuntu: sudo apt install cups-client), or print to a folder.", job.Name)
}

func (s System) lp(job Job) command {
	args := []string{"-n", fmt.Sprint(job.Copies), "-t", job.Name}
	if s.Printer != "" {
		args = append(args, "-d", s.Printer)
	}
	return s.queueCommand("lp", args, job)
}

func (s System) lpr(job Job) command {
	args := []string{fmt.Sprintf("-#%d", job.Copies), "-J", job.Name}
	if s.Printer != "" {
		args = append(args, "-P", s.Printer)
	}
	return s.queueCommand("lpr", args, job)
}

// queueCommand asks for the C locale, because lp translates the sentence that
// carries the request id.
func (s System) queueCommand(name string, args []string, job Job) command {
	for _, option := range s.Options {
		args = append(args, "-o", option)
	}
	if job.MIME == Roll {
		args = append(args, "-o", "raw")
	}
	return command{name: name, args: args, env: []string{"LC_ALL=C"}, stdin: job.Bytes}
}

// requestID finds the id in lp's "request id is front-12 (1 file(s))". lpr prints nothing, so there
// the printer's name has to do.
func (s System) requestID(words string) string {
	_, rest, found := strings.Cut(words, "request id is ")
	id, _, _ := strings.Cut(rest, " ")
	if !found || id == "" {
		return s.printerName()
	}
	return id
}

func (s System) printerName() string {
	if s.Printer == "" {
		return "the default printer"
	}
	return s.Printer
}

func orThisOS(name string) string {
	if name == "" {
		return runtime.GOOS
	}
	return name
}
