package main

import (
	"fmt"
	"os"
	"runtime"
	"slices"
	"strings"

	"tenthpoint/cmd/task/toolchain"
)

// tally counts the results of a check.
type tally struct{ passed, failed int }

func (t *tally) add(other tally) {
	t.passed += other.passed
	t.failed += other.failed
}

// count enters one check that either holds or not.
func (t *tally) count(ok bool) {
	if ok {
		t.passed++
	} else {
		t.failed++
	}
}

// closingLine is the last line a check prints.
func (t tally) closingLine() string {
	return fmt.Sprintf("%d passed, %d failed", t.passed, t.failed)
}

// closingLine is the last line of a whole check: it says what was left out.
func closingLine(t tally, withoutServer bool) string {
	if withoutServer {
		return t.closingLine() + "; without postgres: nothing that needs a server was tested"
	}
	return t.closingLine()
}

// checkChore checks everything and never stops at the first fault: one run reports all of them.
func checkChore(args []string) error {
	withoutServer := slices.Equal(args, []string{"--without", "postgres"})
	if len(args) > 0 && !withoutServer {
		return fmt.Errorf("check takes no arguments but --without postgres, not %q", strings.Join(args, " "))
	}
	packages, err := windowlessPackages()
	if err != nil {
		return err
	}
	if err := freshEngine(); err != nil {
		return err
	}
	setUp := provide(checkNeeds(runtime.GOOS))
	if setUp != nil {
		toolchain.Say("%v", setUp)
	}
	if !withoutServer {
		if err := provide(serverNeeds()); err != nil {
			toolchain.Say("%v", err)
		}
	}

	var all tally
	all.count(formatStep())
	all.count(goStep("vet", toolchain.WithoutCgo, append([]string{"vet", "-trimpath"}, packages...)...))
	all.add(testStep("every test that needs no window", toolchain.WithoutCgo, packages...))
	if !withoutServer {
		all.add(serverStep())
	}
	all.count(benchmarkStep(packages))
	for _, target := range elsewhere {
		all.count(portStep(target))
	}
	all.add(windowSteps(setUp))

	toolchain.Say("")
	toolchain.Say("Counted: each test function once, however many cases it has; format, vet, all benchmarks and each build once. Skipped counts as failed.")
	toolchain.Say("%s", closingLine(all, withoutServer))
	if all.failed > 0 {
		os.Exit(1)
	}
	return nil
}

// checkNeeds is everything a whole check takes. Only X11 systems have the
// real-window run.
func checkNeeds(system string) []need {
	if system == "windows" || system == "darwin" {
		return needsToBuildDesk(system)
	}
	return slices.Concat(deskNeeds, windowNeeds, paperNeeds, pageNeeds)
}

// windowSteps vets the desk's window and types a load into it on a display
// without a screen. When the set-up failed they cannot run, and that is a
// failure: a check that skipped the window has not checked the program.
func windowSteps(setUp error) tally {
	if setUp != nil {
		toolchain.Say("\n== the desk's window: FAILED, not run because the set-up is incomplete (see the top)")
		return tally{failed: 1}
	}
	toolchain.Say("\n== the desk's window: compiling it for the first time takes about four minutes")
	var t tally
	t.count(goStep("vet of the desk's window", toolchain.WithCgo, "vet", "-trimpath", "./cmd/tenthpoint/..."))
	t.add(testStep("the desk's real window", toolchain.WithCgo, "./cmd/tenthpoint/..."))
	return t
}

// A target is another system the terminal program must compile for.
type target struct{ system, processor string }

var elsewhere = []target{{"windows", "amd64"}, {"darwin", "arm64"}}

// portStep compiles the terminal program for another system, keeping nothing.
func portStep(t target) bool {
	env := append([]string{"GOOS=" + t.system, "GOARCH=" + t.processor}, toolchain.WithoutCgo...)
	return goStep("the terminal program compiles for "+t.system+"/"+t.processor, env,
		"build", "-buildvcs=false", "-o", os.DevNull, "./cmd/tenth")
}

// goStep runs one go command as a check and prints the result.
func goStep(name string, env []string, args ...string) bool {
	return step(name, toolchain.Go(env, args...).Run)
}

// step does something as a check and prints the result.
func step(name string, do func() error) bool {
	toolchain.Say("\n== %s", name)
	if err := do(); err != nil {
		toolchain.Say("FAILED %s: %v", name, err)
		return false
	}
	toolchain.Say("ok     %s", name)
	return true
}
