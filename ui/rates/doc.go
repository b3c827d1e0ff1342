// Package rates shows the editions that settle grain: their text, how two of them differ, and the
// result of a supposed load under each.
package rates
