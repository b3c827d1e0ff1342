package examiner_test

import (
	"context"

	"tenthpoint/internal/scalehouse/housetest"
)

// What tests of an invented elevator share, see housetest.
type scene = housetest.Scene

var (
	ctx     = context.Background()
	must    = housetest.Must
	refused = housetest.Refused
)
