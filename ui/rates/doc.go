// Package rates shows the editions that settle grain: their text, how two of them
// differ, and what a supposed load would come to under each.
package rates
