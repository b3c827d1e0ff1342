// Package imports reads lists that were kept elsewhere: growers, trucks with
// their tares, loads of the time before this book.
//
// A list is comma-separated values with a heading row. Every row is read by
// itself and says everything that is wrong with it, by column and with what to
// do, so that a file of a thousand rows is mended once and not a thousand
// times. Nothing is guessed: a column that is not known is named, a date is
// year-month-day, a figure goes through the same bounded parser as one that is
// typed.
//
// Reading writes nothing. What a row would do to the book, and whether a past
// load can be settled at all, is for the desk to say before it takes any of it.
package imports
