// Package load is the life of one truckload, from the yard to the ticket.
//
// A load is a list of facts, each recorded when it happens and never changed: it was opened,
// weighed, sampled, settled, its ticket was issued, printed, voided. A [Load] is the state after
// replaying those facts in order. Real yards keep no fixed order: the sample may come back after
// the truck is empty, the tare may be a stored one, two trucks may be half done at once. So a fact
// is allowed whenever it makes sense, and otherwise [Load.Allow] returns an error that says why.
//
// A typing mistake before the ticket is amended; after the ticket a new ticket refers to the old
// one, and both are kept.
package load
