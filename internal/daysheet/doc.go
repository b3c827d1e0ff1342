// Package daysheet makes the day sheet the manager signs in the evening, and related papers: the
// position, growers' accounts, the registers an examiner asks for.
//
// A sheet is made of [Ticket] rows and adds what it prints: every total is the sum of the lines
// above it, in the figures printed there. A ticket counts on the business day it was issued. What
// was voided or corrected the same day is listed and struck; what is voided or corrected later
// counts against the later day and names the day it touches. So the sheet of a closed day never
// changes.
package daysheet
