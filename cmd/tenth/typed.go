package main

import (
	"fmt"
	"strconv"
	"strings"

	"tenthpoint/internal/entry"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
)

// Figures as people type them on a command line, each read by the bounded
// parser with a sentence when it cannot be.

// percentIn reads a percent from 0 to 100.
func percentIn(name, text string) (quantity.Amount, error) { return entry.Percent(name).Parse(text) }

// finding reads "test-weight=54.2" or "musty=yes", as a grain or an edition
// measures it.
func finding(c grain.Commodity, by interface {
	Factor(grain.FactorID) (grain.Factor, bool)
}, text string) (load.Finding, error) {
	id, result, err := resultOf(text)
	if err != nil {
		return load.Finding{}, err
	}
	factor, err := entry.FactorOf(c, by, id)
	if err != nil {
		return load.Finding{}, err
	}
	return entry.ParseFinding(factor, result)
}

// ticketNumber is a ticket as its number is typed.
type ticketNumber int64

// UnmarshalText reads a number above nought, with or without commas.
func (n *ticketNumber) UnmarshalText(text []byte) error {
	plain := strings.ReplaceAll(strings.TrimSpace(string(text)), ",", "")
	number, err := strconv.ParseInt(plain, 10, 64)
	if err != nil || number < 1 {
		return fmt.Errorf("%q is no number of a ticket", text)
	}
	*n = ticketNumber(number)
	return nil
}
