// Package paperview shows a slip as a sheet of paper, and chapters of the handbook as
// pages: in the largest type in which all of it shows, scrolling only where even the
// smallest is too large.
package paperview
