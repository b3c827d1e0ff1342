// Package published has what a head office lays down for all of its sites: cards of growers and
// editions of rates, each from a day on.
//
// The office writes its publications into a book of its own. They are facts of that book's chain,
// which the office's computers sign. A site takes them over from there, with the place each has in the
// chain, into its own book.
//
// Nothing of a site's own is changed by that. Its cards and editions stay as they are; those of the
// office stand in their place from their day on, where nobody at the site can change them, until the
// office withdraws them. So what a site works by on a day follows from its own book alone, with or
// without a line to the office.
//
// A site need not see the rest of the office's book. Facts that are no publications travel without
// what they say, as a link: number, hash, and the hash before. The chain is whole all the same, and
// the signature of its head covers every publication in it.
package published
