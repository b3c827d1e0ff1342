package main

import "tenthpoint/cmd/task/toolchain"

// positionChore holds the position of 10,000 random days against the journal. The check does the same
// with fewer days.
func positionChore(args []string) error {
	line := []string{"test", "-count", "1", "-timeout", "1h", "-v", "./internal/office/binlog", "-run", "^TestPositionIsWhatTheJournalSays$", "-days", "10000"}
	return toolchain.Go(toolchain.WithoutCgo, append(line, args...)...).Run()
}
