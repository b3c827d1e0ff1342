// Package instruments has the acts on what an elevator measures with: its moisture meters and truck
// scales, their checks, and the logs of them.
package instruments
