// Package printing sends finished documents to a folder, a print queue or a viewer.
//
// A slip, a day sheet and a bin label all become some bytes with a name, a kind and a number of
// copies: a Job. A Destination takes a Job and returns a Receipt, which only says where the job
// went: a print queue that has accepted a job may still be out of paper, so no receipt says
// "printed".
//
// Three destinations cover a scale house:
//
//   - Folder writes the job as a file, whole or not at all, and never over an
//     older file: tickets are evidence. It needs no printer, so it is also the
//     recovery path and the one tests use.
//
//   - System gives the job to the operating system's print queue: lp or lpr on
//     Unix and macOS, the PowerShell print verbs on Windows.
//
//   - Viewer writes the file like Folder and opens it on the screen with the
//     program the person has chosen for that kind of file.
//
//   - Waiting wraps any of them: it keeps jobs that were not accepted, for instance
//     because the printer's queue is gone, and hands it on later in its order.
//
// Nothing here knows what a ticket is.
//
// Every error says what was tried, what the result was, and what the person at the desk can do
// about it.
package printing
