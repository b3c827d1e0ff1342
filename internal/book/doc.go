// Package book is what an elevator's book holds, whichever engine keeps it: rows of
// loads, records of the master data, drafts, the position, filters to choose them
// by, the errors an engine ends with, and the write in which acts are done.
//
// What is asked of a book is declared by those who ask: packages office, scalehouse
// and audit each name the methods they need. Package sqlite is the engine in use;
// package booktest holds what any engine must do, as tests.
package book
