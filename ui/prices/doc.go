// Package prices is the list of the bids posted for a day: grain, place and month of delivery, price,
// and by whom and when each was posted.
package prices
