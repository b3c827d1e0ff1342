package scaleticket

import "tenthpoint/internal/message"

// signatureSection has the full name of the weigher, and the driver.
func signatureSection(t *facts) Section {
	p := newPart(t, "signature", "", Signing)
	weigher := t.l.Weigher
	if weigher == "" {
		weigher = t.House.Weigher
	}
	line := Line{Kind: SignHere, Field: "weigher", Label: t.w.Weigher, Value: weigher}
	if weigher == "" {
		line.Value, line.Missing = t.w.WeigherLater, true
	}
	p.put(line)
	driver := t.l.Details.Driver
	if driver == "" {
		driver = t.w.NotNamed
	}
	p.put(Line{Kind: SignHere, Field: "driver", Label: t.w.DriverSigns, Value: driver})
	return p.Section
}

// footer has the words that the law of the place asks for under a ticket, says what takes precedence
// over it, and that what it says of the law is to be confirmed. States differ in the words, and one
// says the opposite of the others: where nobody read the law there are none. A house with keys says
// who signed the ticket.
func footer(t *facts) []string {
	signed := append(some(t.w.word(t.Titles.Words)), some(t.w.say(t.Vouched))...)
	if !t.HouseKey.IsZero() && !t.isDraft() {
		signed = append(signed, t.w.say(message.New("Key of the house: %s", message.Own(t.HouseKey.Fingerprint()))))
	}
	return append(signed, t.w.Cautions, t.w.LawFirst+" "+t.w.Confirm)
}

// codeLine is the code the ticket is found by; a preview has none.
func codeLine(t *facts) string {
	if t.Code == "" || t.isDraft() {
		return ""
	}
	return t.w.CheckCode + " " + t.Code
}
