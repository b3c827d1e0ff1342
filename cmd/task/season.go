package main

// seasonChore reconciles a whole season with the journal. The check does the same
// with fewer loads.
func seasonChore(args []string) error {
	line := []string{"test", "-count", "1", "-timeout", "30m", "-v", "./internal/scalehouse", "-run", "^TestSeasonReconcilesWithTheJournal$", "-season", "10000"}
	return goTool(withoutCgo, append(line, args...)...).Run()
}
