// Package setup is the sheet on which an elevator is set up and changed: its name,
// units, language, scale and the grains it takes.
package setup
