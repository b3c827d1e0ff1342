// Package tariff holds what an elevator posts for keeping grain and for its papers:
// storage, the service charge of a delayed price, elevation, fees of receipts, interest.
//
// A tariff is a dated edition beside the rates, read and checked as strictly, and worked
// on the same sheet: [Edition.Keep] writes the days, the free time and each band as steps
// that a grower can redo on a pocket calculator.
//
// Storage is charged on grain that is still its depositor's; a service charge on grain that
// became the house's at delivery while its price stays open. The two read alike and differ
// in law, so a file says which it means and may not name the wrong titles.
//
// Days are numbered from the first that counts: day 1 is the day of delivery or the day
// after it, as the tariff says. Free time and bands are counted in these days, in months
// from that day, or end on a day of the calendar. A daily charge is kept as it was posted:
// 0.04 for 30 days is not 0.001333 a day, which over 40 days and 1,000 bushels is a cent less.
package tariff
