package rates

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/rates/handling"
	"tenthpoint/internal/rates/shrink"
)

// PureWater returns the same edition with only the water taken: the bare formula from the same
// trigger to the same moisture, and no handling. Compared with the edition itself it shows what a
// rate per point takes beyond the water. Fixed rates of 1.2 to 1.5 % are in use where the formula
// gives 1.176 (to 15.0 %); the difference is handling by another name.
//
// The result is for comparing. It has no text and no hash, so that no ticket can be settled under
// it. An edition that shrinks nothing names no moisture to shrink to; it is returned without
// handling and otherwise unchanged.
func PureWater(e *Edition) *Edition {
	bare := *e
	bare.ID = e.ID + "/pure-water"
	bare.File, bare.Text, bare.Hash = "", nil, ""
	bare.Handling = handling.Rule{Method: handling.None, Rounding: e.Handling.Rounding, Source: message.Words("the pure water formula")}
	if e.Shrink.Method != shrink.None {
		bare.Shrink.Method = shrink.Water
		bare.Shrink.Source = message.Words("the pure water formula")
	}
	return &bare
}
