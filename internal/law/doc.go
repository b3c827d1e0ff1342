// Package law keeps published rules as dated files: grade tables, recording
// rules, legal bushels, moisture classes, tolerances, days to keep a sample or
// to ask for another test.
//
// A [File] says its jurisdiction, the days it is in force, the document and how that was read. Its
// body is read by the package the rule is about: grades by grain, meters by meter. A changed rule
// is a new file with a later first day; no file is edited once a ticket has used it. A [Law] is the
// files in force on one day. Its hash is in the facts of a ticket and its texts in the book, so
// that February's dispute reads November's table.
//
// Everything here is to be confirmed locally: the program restates, it does not
// make law.
package law
