// Package money holds the acts of a scale house on what follows a ticket: contracts, settlement
// sheets, payments. Each is one transaction.
package money
