// Package ask has the questions that several areas of the window put: which paper to print, who owns
// a load, and why a ticket is void.
package ask
