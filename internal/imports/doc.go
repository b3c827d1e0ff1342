// Package imports reads lists that were kept elsewhere: growers, trucks with
// their tares, loads of the time before this book.
//
// A list is comma-separated values with a heading row. Every row is read separately and reports all
// its mistakes, by column and with a remedy, so that a file of a thousand rows is corrected once
// and not a thousand times. Nothing is guessed: an unknown column is an error, a date is
// year-month-day, a figure goes through the same bounded parser as a typed one.
//
// Reading writes nothing. What a row would change in the book, and whether a past load can be
// settled, is checked by package intake.
package imports
