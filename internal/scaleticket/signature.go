package scaleticket

// signature is who answers for the weights, by full name, and the driver.
func (c *composer) signature() {
	c.open("signature", "", Signing)
	weigher := c.l.Weigher
	if weigher == "" {
		weigher = c.House.Weigher
	}
	line := Line{Kind: SignHere, Field: "weigher", Label: c.w.Weigher, Value: weigher}
	if weigher == "" {
		line.Value, line.Missing = c.w.WeigherLater, true
	}
	c.put(line)
	driver := c.l.Details.Driver
	if driver == "" {
		driver = c.w.NotNamed
	}
	c.put(Line{Kind: SignHere, Field: "driver", Label: c.w.DriverSigns, Value: driver})
}

// footer is what the ticket is not, and what outranks it.
func (c *composer) footer() {
	c.doc.Footer = []string{c.w.NotReceipt, c.w.Cautions, c.w.LawFirst}
	if c.Code != "" && !c.isDraft() {
		c.doc.CodeLine = c.w.CheckCode + " " + c.Code
	}
}
