// Package gallery holds tests of widgets, charts and paper: their pictures, and their drawing
// against testdata. It has no code of its own.
package gallery
