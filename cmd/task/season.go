package main

import "tenthpoint/cmd/task/toolchain"

// seasonChore reconciles a whole season with the journal. The check does the same
// with fewer loads.
func seasonChore(args []string) error {
	line := []string{"test", "-count", "1", "-timeout", "30m", "-v", "./internal/office", "-run", "^TestSeasonReconcilesWithTheJournal$", "-season", "10000"}
	return toolchain.Go(toolchain.WithoutCgo, append(line, args...)...).Run()
}
