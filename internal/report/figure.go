package report

import "strings"

// number is a printed figure as a program reads it: without the commas between
// thousands, with a plain minus. What is no figure, such as "price later", is
// not a number. How many decimals were printed is kept, so that 812.40 stays
// 812.40.
func number(cell string) (plain string, places int, isNumber bool) {
	plain = strings.ReplaceAll(strings.Replace(cell, "−", "-", 1), ",", "")
	digits := strings.TrimPrefix(plain, "-")
	whole, decimals, hasPoint := strings.Cut(digits, ".")
	if whole == "" || !isDigits(whole) || hasPoint && (decimals == "" || !isDigits(decimals)) {
		return cell, 0, false
	}
	return plain, len(decimals), true
}

func isDigits(s string) bool { return strings.Trim(s, "0123456789") == "" }

// cell returns the machine-readable value of a cell: a plain figure in a column of figures, else
// the words as printed.
func (c column) cell(printed string) string {
	if c.align != Right {
		return printed
	}
	plain, _, _ := number(printed)
	return plain
}
