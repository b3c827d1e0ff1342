// Package dispute models disputes about tickets.
//
// A grower doubts a figure. The retained sample is split, sealed airtight when moisture is at
// issue, and sent to an official or agreed third party; both sides settle on the result, and the
// numbers of both tests are kept (Montana 80-4-711; North Dakota 4.1-58-04). A result that changes
// the ticket leads to a corrected ticket, which refers to the old one. None of this is ever
// deleted, even when the grower was wrong.
package dispute
