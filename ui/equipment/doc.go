// Package equipment has the screen of the elevator's equipment: scales and their links, people,
// bins, the printer, the file of the book, its backups and its check.
package equipment
