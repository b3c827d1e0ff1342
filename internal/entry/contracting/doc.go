// Package contracting reads what is typed of a contract: the fields of a new one and of each act on one
// that is there, as data, and the terms or the change they make. Window and terminal ask it, so both
// take the same texts and say the same of them. That a change may be is decided by package contract.
package contracting
