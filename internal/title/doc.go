// Package title says whose grain is in the house and under what.
//
// A ticket does not stay a ticket: every law read forces it into one of a few
// states. Sold grain and grain under a contract that has passed title belongs to
// the house; grain in open storage, under a warehouse receipt or in the grain bank
// belongs to the depositor; a delayed-price contract passes title at delivery and
// leaves the price open (8 Ill. Adm. Code 281.50, Ohio R.C. 926.29). Until anything is
// decided grain counts as the depositor's, unless the rules of the place say
// otherwise. The words matter in court, so they stand here and nowhere else.
//
// The rules of a place, such as how long a ticket may stay undecided and what must
// stand under it, are dated files of law: see [ReadRules].
package title
