// Package schedules carries the files the program ships with: rate editions
// under editions and moisture charts under charts.
//
// Everything here is data that a manager can open and read. Charts and rates
// whose status is "example" are invented and say so wherever they show; an
// elevator's own files stand beside them in its own folder and are read by the
// same readers.
package schedules

import "embed"

// Files are the shipped files by path: "charts/example-corn-250g.toml".
//
//go:embed */*.toml charts/*.csv
var Files embed.FS
