package terminal

import (
	"os"
	"runtime/debug"
)

// CollectSeldom lets garbage grow to four times what is in use before it is collected. A command that
// walks a whole book or file makes much of it and ends soon: a fifth of its time is saved. What the
// user has set in GOGC stays.
func CollectSeldom() {
	if os.Getenv("GOGC") == "" {
		debug.SetGCPercent(400)
	}
}
