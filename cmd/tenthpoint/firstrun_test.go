//go:build cgo && linux

package main

import (
	"strings"
	"testing"
)

// A new elevator, from an empty book to its first slip, by the keyboard alone.
func TestFirstRunToFirstSlip(t *testing.T) {
	d := newDesktop(t)
	d.open()
	d.write("Ann Example", "Example Siding", "1 Example Road", "Nowhere", "555-0101")
	d.press("ctrl+k") // all examples
	d.press("ctrl+s")
	d.press("ctrl+g")
	d.write("1", "Example Hollow", "", "", "") // the last Enter is on the button
	d.write("", "corn", "T1", "52300")
	d.sayWhyTyped()
	d.write("15.1", "57", "", "", "", "", "24120")
	d.press("F12")
	slip := d.paper("ticket-1.pdf")
	d.quit()
	for _, words := range []string{"Example Siding", "1 Example Road", "555-0101", "Example Hollow", "28,180 lb", "15.1 %", "Ann Example", "EXAMPLE - NOT FOR TRADE", "price not set"} {
		if !strings.Contains(slip, words) {
			t.Errorf("the slip does not say %q:\n%s", words, slip)
		}
	}
}
