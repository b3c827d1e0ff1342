// Package postgres keeps a book in one schema of a PostgreSQL database, for a house with several
// desks. It does what package sqlite does, for many programs at once.
//
// An act must see the true end of the chain, and no desk may hold the others up: not one that is
// slow, and not one whose cable was pulled in the middle of an act. So a write holds nothing in the
// server while it is thought over. [Book.Write] reads how many writes there were, lets the act read
// what it likes, and collects what it wants to do in this program (pending.go); what the act reads
// again it sees as if it were done (overlay.go). Then one call of the server's function append
// (tables/0001_book.sql) does all of it, provided that nobody has written in between; else the act
// is run again. Desks take turns by a lock that is only a courtesy: who has waited too long for it
// goes on without (turn.go).
//
// Triggers refuse changes to facts, editions and numbers, and privileges leave a desk nothing but
// that function and its drafts. If an administrator gets past both, the checks of the book find it.
//
// Passwords and certificates come from the settings that every program of PostgreSQL reads
// (PGPASSFILE, PGSSLMODE and so on), and from nowhere else.
package postgres
