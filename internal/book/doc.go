// Package book has the types of an elevator's book, independent of the storage engine: rows of
// loads, records of the master data, drafts, the position, filters, the errors of an engine, and
// the write transaction.
//
// The interfaces of a book are declared by their users: packages office, scalehouse and audit each
// name the methods they need. Package sqlite keeps a book in a file of one computer, package postgres
// on a server for several desks; package booktest is the conformance suite of both.
package book
