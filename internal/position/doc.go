// Package position is the daily position record: what lies in the house, and whose it is.
//
// Two records stand side by side. One is the weight as weighed, bin by bin: what trucks brought,
// what they carried away, and what the house itself changed. The other is the weight as settled,
// line by line of who owns it: warehouse receipts, open storage, grain bank, and what the company
// owns. They differ by what a settlement takes off a load: water that is not dried out yet,
// dockage that is still in the grain, handling that is not lost yet. These stand in lines of their
// own, as shrink not yet posted, so that
//
//	in the house = depositors' grain + company-owned + shrink not yet posted
//
// on every evening, or the record says by how much not. A run of the dryer makes both sides less by
// the same water; a truck that leaves takes company-owned grain. Company-owned below zero means
// that depositors' grain is gone.
package position
