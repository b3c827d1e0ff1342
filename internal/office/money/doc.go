// Package money answers what follows a ticket: contracts and how they fill, tariffs, settlement
// sheets, payments, and the papers of them.
package money
