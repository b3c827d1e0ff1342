// Package simulation works a scale house whose clock, disk, desks and choices are all drawn from one
// seed, and looks for what must never happen: an acknowledged fact that is gone, a number given
// twice, a time that goes back unasked, a book that is not sound, an honest act refused.
//
// Some desks share one book on a faulty disk. Between trucks their clock steps, a call to the disk
// fails, the disk fills up, the program is killed or the power goes. The same seed gives the same
// journal, byte for byte, so that whatever is found happens again. It is for tests, and runs for as
// long as asked in `go run ./cmd/task soak`.
package simulation
