// Package gallery holds the tests that set widgets, charts and paper side by side:
// their pictures, and what each is made of against testdata. It has no code of its
// own.
package gallery
