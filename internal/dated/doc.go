// Package dated holds editions against each other: what an elevator posts, rates and
// tariffs alike, is a file for a period, and one file follows another.
//
// Editions of one line, such as corn of the main schedule, replace each other. No two of
// them may be in force on one day, no day between them may be left out, and a file that
// was used is never changed: a correction is a new edition that names the old one, keeps
// to its days and counts in its place. [NewSet] reports every breach of that at once, at
// the line of the file to look at; [Set.On] finds the edition of a day.
package dated
