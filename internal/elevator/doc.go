// Package elevator is what an elevator knows before a truck comes: its own name
// and scale, its growers, their trucks and usual shares, its bins, its people
// and contracts.
//
// Each is written down whole as a fact whenever it changes; the last one in the
// journal is in force. Tickets copy what they print, so a grower who moves in
// December does not change a November ticket.
package elevator
