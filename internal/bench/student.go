package bench

import "tenthpoint/internal/quantity"

// Student's t: how many standard errors to either side of a mean hold the truth
// 95 times in 100, by degrees of freedom. The values are those of the
// NIST/SEMATECH e-Handbook of Statistical Methods, section 1.3.6.7.2, column
// 0.975, written from memory; the test works every one of them out again from
// the distribution.
var t95 = []string{
	"12.706", "4.303", "3.182", "2.776", "2.571", "2.447", "2.365", "2.306", "2.262", "2.228",
	"2.201", "2.179", "2.160", "2.145", "2.131", "2.120", "2.110", "2.101", "2.093", "2.086",
	"2.080", "2.074", "2.069", "2.064", "2.060", "2.056", "2.052", "2.048", "2.045", "2.042",
}

const t95Source = "Student's t, 95 % two-sided: NIST/SEMATECH e-Handbook 1.3.6.7.2"

// student is t for so many degrees of freedom, from 1. Beyond the table it
// stays at the last row, which makes an interval a little too wide and never
// too narrow.
func student(degrees int) quantity.Amount {
	return quantity.Of(t95[min(degrees, len(t95))-1], quantity.Plain)
}
