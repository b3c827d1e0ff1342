// Package ledger turns settlement sheets and payments into the postings of double-entry bookkeeping.
//
// A sheet is a purchase: the net market value of the grain is debited; services, storage, levies,
// advances and interest taken off it are credited, and what is left is owed to the grower. A payment
// clears what is owed. What was void is posted again with its signs turned, on the day it was void:
// nothing is ever taken out. Every transaction sums to zero, or it is not made.
//
// Which account number each of these has is the accountant's to say, in a file; the package knows
// their roles alone.
package ledger
