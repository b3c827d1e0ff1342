// Package dryness answers a grower's question: is the grain dry enough, and what
// can be done if it is not.
//
// [Rules] are the limits of one crop: the Canadian class, the elevator's own limits for buying and
// for storing. [Rules.Judge] gives a [Verdict] for each limit that is set and lists what can be
// done with the load. An answer is never more certain than the reading: the meter's tolerance and
// the warnings about the test are part of it. It is advice and no part of a settlement.
package dryness
