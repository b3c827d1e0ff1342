// Package sheets is the money after the ticket: the settlement sheet being made, with the tickets that
// are left at the left and the sheet as it will print at the right, and the list of sheets with what
// is paid on each.
package sheets
