// Package factors carries what is known of results beside the grade tables, as
// data. It imports nothing, so that the core can read it.
package factors

import _ "embed"

// Trade is what the trade tests grain for beside the factors of the grade tables,
// and how it is recorded.
//
//go:embed trade.toml
var Trade []byte

// HalfLitre is the test weight that follows from the weight of a half-litre cup.
//
//go:embed half-litre.toml
var HalfLitre []byte
