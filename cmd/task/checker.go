package main

import (
	"tenthpoint/cmd/task/engine"
	"tenthpoint/cmd/task/toolchain"
)

// checkerChore builds the engine of the page that checks tickets.
func checkerChore([]string) error { return engine.Build(".") }

// freshEngine builds the engine where it is behind its source.
func freshEngine() error {
	stale, err := engine.Stale(".")
	if err != nil || !stale {
		return err
	}
	toolchain.Say("The engine of the checker's page is behind its source. Building it; commit it with what you changed.")
	return engine.Build(".")
}
