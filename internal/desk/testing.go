package desk

import "tenthpoint/internal/load"

// Sample is a sample as it would be written down with this result in it, so that
// what follows from it can be shown before it is.
func (t Testing) Sample(s load.Sample) load.Sample { return tested(s, t) }
