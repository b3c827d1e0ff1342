// Package paperview shows papers: a slip as the pages that print ([Pages]), cards of
// lines ([Card]), and chapters of the handbook ([Prose]). They scroll only where they
// are higher than the window even when they are set as small as can be read.
package paperview
