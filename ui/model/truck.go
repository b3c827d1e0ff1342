package model

// TruckRow is one truck on the yard, ready to show.
type TruckRow struct {
	ID, Key, Truck, Who, Waits string
	Next                       Status
	Current                    bool
}
