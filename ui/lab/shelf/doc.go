// Package shelf has the retained samples: which may be discarded today, which must stay, and which a
// dispute holds.
package shelf
