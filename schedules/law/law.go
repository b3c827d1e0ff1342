// Package law carries the published rules the program ships with, as dated
// files: a folder for each jurisdiction. It is data and imports nothing, so that
// the core can read it.
package law

import "embed"

// Files are the shipped files by path: "us/grades-corn.toml".
//
//go:embed us canada places first.txt
var Files embed.FS
