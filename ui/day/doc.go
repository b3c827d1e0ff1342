// Package day is the manager's sheet of a business day: what came and went, what was
// paid, what needs a look, and closing the day.
package day
