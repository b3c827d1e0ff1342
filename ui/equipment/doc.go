// Package equipment is what an elevator works with: scales and their links, people,
// bins, the printer, the file of the book, its backups and its check.
package equipment
