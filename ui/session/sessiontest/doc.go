// Package sessiontest is a window made of notes, for tests of presenters: what was
// said, asked and printed is kept, and a question waits until the test answers it.
package sessiontest
