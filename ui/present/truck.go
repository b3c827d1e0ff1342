package present

import (
	"tenthpoint/ui/model"
)

// YardRow is one truck on the yard, ready to show.
type YardRow struct {
	ID, Key, Truck, Who, Waits string
	Next                       model.Remark
	InHand                     bool
}
