// Package keeping carries the published curves and tables of storing grain, as
// dated data with their sources. It imports nothing, so that the core can read it.
package keeping

import _ "embed"

// Equilibrium is the constants of the equations of equilibrium moisture.
//
//go:embed equilibrium.toml
var Equilibrium []byte

// StorageDays is the tables of allowable storage time.
//
//go:embed storage-days.toml
var StorageDays []byte

// Limits is the moistures that extension services recommend for storing.
//
//go:embed limits.toml
var Limits []byte

// Drying is the published figures of drying and aeration.
//
//go:embed drying.toml
var Drying []byte
