// Package tickets is the list of all tickets: it is narrowed by one typed line, and
// the chosen ticket shows its slip, its working and how it differs from another. A
// manager voids, corrects and reissues tickets here.
package tickets
