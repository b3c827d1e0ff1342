package model

import "tenthpoint/internal/grain/look"

// TruckRow is one truck on the yard, ready to show.
type TruckRow struct {
	ID, Key, Truck, Who, Waits string
	Late                       bool // it has waited longer than the house wants
	Next                       Status
	Column                     int // of the board, from 0
	Current                    bool
	Look                       look.Look // of its grain; the zero Look while that is not known
}

// TruckColumn is one column of the board: the trucks that wait for the same act.
type TruckColumn struct {
	Title string
	Rows  []TruckRow
}
