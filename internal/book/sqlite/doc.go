// Package sqlite keeps the book: one SQLite file that holds the journal, the
// editions its settlements used, the numbers it gave out, and the read models
// made from the facts.
//
// All writing goes through [Book.Write]: one transaction in which a use case reads the facts of its
// subject, appends new ones, takes numbers, keeps the edition it settled by and updates the read
// models. When Write returns without an error everything is on the disk; when it returns one,
// nothing happened. There is one writer, so an append always sees the true end of the chain; any
// number may read meanwhile, each from a snapshot.
//
// Triggers in the file prevent changes to facts, editions and numbers, and if someone drops those,
// [Book.VerifyChain], [Book.VerifyEditions] and [Book.VerifyFile] detect the changes.
//
// Drafts are separate: text typed but not yet entered. They are saved while typing
// ([Book.SaveDraft]), may be changed and deleted, and no check covers them.
//
// The file grows by migrations (package migrations). A book records each one applied; a book of a
// newer program, or with a history that differs from this program's, is refused rather than guessed
// at.
package sqlite
