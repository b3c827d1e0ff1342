package main

import (
	"slices"
	"testing"
)

func TestPackagesWithBenchmarks(t *testing.T) {
	t.Chdir("../..")
	got, err := packagesWithBenchmarks([]string{modulePath + "/cmd/task", modulePath + "/internal/quantity", modulePath + "/internal/settle"})
	if err != nil || !slices.Equal(got, []string{modulePath + "/internal/settle"}) {
		t.Error(got, err)
	}
}
