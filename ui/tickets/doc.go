// Package tickets has the screen of all tickets: one search line filters the list, and the chosen
// ticket shows its slip, its working and how it differs from another. A manager voids, corrects and
// reissues tickets here.
package tickets
