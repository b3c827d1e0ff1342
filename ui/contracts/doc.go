// Package contracts is the list of contracts with what is delivered on each, and what is done with
// them: written down, signed, priced, extended, rolled, bought out, cancelled.
package contracts
