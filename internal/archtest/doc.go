// Package archtest holds the rules of this repository as an ordinary test.
//
// A rule that lives only in a document is forgotten in the first hurry. Here
// each rule is a small function from parsed source files to a list of
// problems, written as sentences with file and line: which package may import
// which, where a clock, a float or a rounding may be used, how long a file and
// how large a package and a type may grow. TestArchitecture applies them all and reports every problem at once. Beside
// each rule is a test that feeds it a few lines that break it, because a
// rule that cannot fail protects nothing.
//
// The package has no code of its own, only tests; it reads source with the
// standard parser and never type-checks, so it takes a second or two.
package archtest
