package explanation

import (
	"tenthpoint/internal/law"
	"tenthpoint/internal/message"
	"tenthpoint/internal/report"
)

// byHand is the check page: how to redo the ticket, and whose word outranks the
// paper's.
func (c *composer) byHand() {
	c.put(report.NewPage{}, report.Heading{Text: message.New("How to check this by hand")})
	for _, p := range c.instructions() {
		c.put(report.Para{Text: p})
	}
	c.put(report.Heading{Text: message.New("If you doubt it")})
	for _, p := range c.doubts() {
		c.put(report.Para{Text: p})
	}
	c.put(report.Signing{Names: []message.Text{message.New("For the elevator, full name"), message.New("Grower, full name: I have had this explained to me")}})
}

func (c *composer) instructions() []message.Text {
	out := []message.Text{
		message.New("1. Begin with gross and tare on the scale ticket. Gross less tare is net, exactly; weights are never rounded."),
		message.New("2. Go down the steps. The line in words says what is done; the line under it says the same in figures, with the result in full before it is rounded. Type it into a pocket calculator as it stands: what is in brackets first, then × and ÷, then + and −."),
		message.New("3. Round as the line says and go on with the rounded figure; the program does the same, so every line comes out to the last digit. Half-up takes the nearer step, and from the middle the one farther from zero (2.45 becomes 2.5); down drops what is beyond the step, up goes to the next one."),
		message.Words("4. A percent of a weight is the weight × the percent ÷ 100. A point is one percentage point of moisture; points are not percents of the weight. Grain at 25 % brought to 15 % gives off 10 points, but loses 10 ÷ 85 of its weight, because what stays is only 85 % of the dry grain."),
	}
	if e := c.Settlement.Edition; e != nil {
		out = append(out,
			message.New("5. Hold the lines quoted from the posted rates against the elevator's posting: edition %s, in force %s. The SHA-256 on the first page is that of the file's text; any program that works out SHA-256 must give the same for the same text.", e.ID, e.Days()),
			message.New("6. Bushels are pounds divided by the legal pounds of a bushel, never by the test weight."))
	}
	return append(out, message.New("The check code %s belongs to this ticket alone. The elevator finds the ticket by it and shows that nothing in the book was changed since.", c.Code))
}

func (c *composer) doubts() []message.Text {
	out := []message.Text{message.New("Ask. The elevator can settle the load again at the figure you think right, under any of its editions, and print it.")}
	if c.Rule.Source != "" {
		out = append(out, c.Rule.Stated(message.New("Another test of the retained sample is to be asked for by %s (%s). Retained sample: %s.", c.Due, c.Rule.Source, c.retained())))
	} else {
		out = append(out, message.New("Ask at once for another test of the retained sample: it is kept for a limited time. Retained sample: %s.", c.retained()))
	}
	return append(out,
		message.New("The sample is split in front of both sides and sealed, airtight when moisture is at issue, and goes to an official or agreed third party. Both tests are kept, and a result that changes the ticket leads to a corrected ticket that refers to this one."),
		message.New("A house meter's reading is not an official test. An official inspection may find another figure on the same grain and goes before the house's."),
		law.ToConfirm(message.New("Local law, the weights-and-measures authority, the licensed weighmaster and the official inspector outrank the program that made this paper.")))
}
