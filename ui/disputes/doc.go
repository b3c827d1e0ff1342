// Package disputes follows a grower's complaint from the ticket to its decision: the
// sample sent for a second opinion, its result, and the file that is printed.
package disputes
