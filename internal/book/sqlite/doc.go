// Package sqlite keeps the book: one SQLite file that holds the journal, the
// editions its settlements used, the numbers it gave out, and the read models
// made from the facts.
//
// All writing goes through [Book.Write]: one transaction in which a use case
// reads the facts of its subject, appends new ones, takes numbers, keeps the
// edition it settled by and brings the read models up to date. When Write
// returns without an error everything is on the disk; when it returns one,
// nothing happened. There is one writer, so whoever appends sees the true end
// of the chain; any number may read meanwhile, each from one moment's state.
//
// Facts, editions and numbers cannot be altered through the file's own
// triggers, and if someone takes those away, [Book.VerifyChain],
// [Book.VerifyEditions] and [Book.VerifyFile] find what was done.
//
// Drafts are the one thing beside all this: what a person has typed and nobody
// has entered. They can be kept at the speed of typing ([Book.SaveDraft]), change
// and go as they like, and no check looks at them.
//
// The file grows by migrations (package migrations). A book remembers each
// one it went through; a book of a newer program, or with a history that
// differs from this program's, is refused rather than guessed at.
package sqlite
