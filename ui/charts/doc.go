// Package charts is the pictures of figures: the moisture ruler, bars, and a meter's
// error from check to check.
package charts
