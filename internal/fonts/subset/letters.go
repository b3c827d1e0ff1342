package subset

// Printed are the letters of the papers: those of English, French, Spanish and
// their neighbours in Latin script, Greek and Cyrillic for the names of people and
// places, and the signs of a working.
func Printed() []rune {
	var all []rune
	for _, block := range [][2]rune{
		{0x20, 0x7E}, {0xA0, 0xFF}, // English, French, Spanish
		{0x100, 0x17F},                 // further letters with accents
		{0x386, 0x3CE}, {0x400, 0x45F}, // names
		{0x2010, 0x2015}, {0x2018, 0x201E}, // dashes, quotation marks
	} {
		for r := block[0]; r <= block[1]; r++ {
			all = append(all, r)
		}
	}
	return append(all, []rune("•…‰′″‹›€№™←↑→↓√≈≠≤≥−∞½⅓⅔⅛⅜⅝⅞✓\u2009\u202f")...)
}

// PaperName returns the name of the fonts of papers, in one style.
func PaperName(style string) Name {
	return Name{
		Family: "Tenthpoint Papers", Style: style, Version: "1.0",
		Copyright: "Cut from DejaVu Sans Condensed 2.37; see LICENSE.txt",
	}
}
