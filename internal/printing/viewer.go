package printing

import (
	"context"
	"os/exec"
	"time"

	"tenthpoint/internal/message"
)

// Viewer writes the job to Folder and opens the file on the screen. The person
// may print it from there, which is the surest way on a computer whose print
// queue nobody has set up.
type Viewer struct {
	Folder   string
	OS       string        // a GOOS name; empty means the one this program runs on
	Patience time.Duration // how long an opener may take to fail; zero means 2 s
}

// Send writes and opens. When the file is written but cannot be opened, the
// receipt still carries its path beside the error.
func (v Viewer) Send(ctx context.Context, job Job) (Receipt, error) {
	receipt, err := Folder{Path: v.Folder}.Send(ctx, job)
	if err != nil {
		return Receipt{}, err
	}
	return receipt, v.Open(ctx, receipt.Where)
}

// Open shows a file that is already there.
//
// Some openers return at once, others stay as long as the window is open, and
// the window must outlive this program's interest in it. So Open waits only
// Patience for a failure; an opener still running by then, or when ctx ends,
// is taken to be showing the file, and is left alone. Its output is not read:
// a window whose pipe closes under it may die with it.
func (v Viewer) Open(ctx context.Context, path string) error {
	c := v.opener(path)
	program, err := exec.LookPath(c.name)
	if err != nil {
		return message.Device.Errorf("%s cannot be shown: %w. Install a desktop opener (on Debian or Ubuntu: sudo apt install xdg-utils), or open the file by hand.", path, err)
	}
	cmd := exec.Command(program, c.args...)
	if err := cmd.Start(); err != nil {
		return message.Device.Errorf("%s cannot be shown: %w. Open the file by hand.", path, err)
	}
	ended := make(chan error, 1)
	go func() { ended <- cmd.Wait() }()
	timer := time.NewTimer(v.patience())
	defer timer.Stop()
	select {
	case err := <-ended:
		if err != nil {
			return message.Device.Errorf("%s cannot be shown: %s ended with %w. Choose a program for this kind of file, or open it by hand.", path, c.name, err)
		}
	case <-timer.C:
	case <-ctx.Done():
	}
	return nil
}

func (v Viewer) patience() time.Duration {
	if v.Patience <= 0 {
		return 2 * time.Second
	}
	return v.Patience
}

// opener is the system's command to open a file with the user's program. On Windows it is the
// shell's protocol handler rather than cmd's start, which would interpret characters like & in a
// file name.
func (v Viewer) opener(path string) command {
	switch orThisOS(v.OS) {
	case "windows":
		return command{name: "rundll32", args: []string{"url.dll,FileProtocolHandler", path}}
	case "darwin":
		return command{name: "open", args: []string{path}}
	}
	return command{name: "xdg-open", args: []string{path}}
}
