// Package sessiontest has a fake window for tests of presenters: it keeps what was said, asked and
// printed, and a question waits until the test answers it.
package sessiontest
