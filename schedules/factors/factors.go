// Package factors carries the results that the trade tests grain for beside those
// of the grade tables, as data. It imports nothing, so that the core can read it.
package factors

import _ "embed"

// Trade is the list: what is tested for in which grain, and how it is recorded.
//
//go:embed trade.toml
var Trade []byte
