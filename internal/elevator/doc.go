// Package elevator has the master data of an elevator: its own name and scales, its growers, their
// trucks and usual shares, its bins, its people and contracts.
//
// Each record is written whole as a fact whenever it changes; the last one in the
// journal is in force. Tickets copy what they print, so a grower who moves in
// December does not change a November ticket.
package elevator
