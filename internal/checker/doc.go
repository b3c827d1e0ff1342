// Package checker settles a ticket again for whoever holds its slip, without the house, its book or a
// network. It is what the page of `tenth checker` runs in a browser, as WebAssembly (cmd/checker).
//
// A [Checker] knows what the page was made with: the editions a house has posted and the keys it signs
// with, or nothing of any house. It reads the code of a slip ([Checker.Check]) or figures that
// somebody types ([Checker.Work]), settles them by the ticket's own engine, and answers with HTML: who
// signed, what the slip says beside what its facts give, the whole working, what other figures would
// have made. The answers are made here and not in the browser's own language, so that tests read them
// as a grower does.
//
// Nothing is kept: each question is answered from what it brings.
package checker
