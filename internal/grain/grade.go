package grain

import (
	"tenthpoint/internal/message"
)

// Advisory is shown with every grade.
const Advisory = "Advice only: an official grade is given only by a licensed inspector."

// GradeResult is the result of grading a sample by the table.
type GradeResult struct {
	// Grade is the grade, or while something has not been tested "no better than U.S. No. 2", and
	// "not graded" before anything was.
	Grade message.Text
	// Best is the bare name of the best grade still open, such as "U.S. No. 2";
	// empty before anything was tested.
	Best string
	// Complete reports that nothing untested could lower the grade.
	Complete bool
	// Open reports that the lot may still be graded below Best: something is not
	// tested, or a fault was noticed whose rule was not read.
	Open bool
	// Sample reports that there is no numbered grade; HeldDown has the reasons.
	Sample bool
	// HeldDown are the lines of the table that kept the lot from the next better grade.
	HeldDown []Breach
	// Special are the words added to the grade, and SpecialBecause the reason
	// for each, in the same order.
	Special        []string
	SpecialBecause []message.Text
	// NotTested names the factors still missing for the grade, and SpecialNotTested the special
	// grades that cannot be determined yet.
	NotTested, SpecialNotTested []string
	// Faults are the observations that make it sample grade.
	Faults []message.Text
	// Cautions are faults noticed whose rule was not read: they do not lower
	// the grade here, but it is not claimed either.
	Cautions []message.Text
	// NotJudged names what this table does not cover.
	NotJudged string
	Advisory  string
	Source    string
}

// Grade puts a sample into the best grade all of whose limits it meets. Results are recorded by the
// grain's own rules before they are compared. The error joins a sentence for every result that does
// not belong to the grain; a commodity without a grade table is an error.
func (c Commodity) Grade(obs Observations) (GradeResult, error) {
	if c.Grades == nil {
		return GradeResult{}, message.NotFound.Errorf("There is no United States grade table here for %s; go by moisture class, dockage and the edition", c.Name)
	}
	r, err := c.results(obs)
	if err != nil {
		return GradeResult{}, err
	}
	g := c.Grades.grade(r)
	g.addSpecial(r)
	return g, nil
}

func (t *GradeTable) grade(r results) GradeResult {
	verdicts := make([]verdict, len(t.Limits))
	worst, known := 0, 0
	for i, l := range t.Limits {
		verdicts[i] = t.judge(l, r)
		worst = max(worst, verdicts[i].best)
		known += len(verdicts[i].known)
	}
	g := GradeResult{Best: t.name(worst), NotJudged: t.NotJudged, Advisory: Advisory, Source: t.Source}
	for _, v := range verdicts {
		if v.best == worst && worst > 0 {
			g.HeldDown = append(g.HeldDown, t.because(v, r))
		}
		if v.could > worst {
			g.NotTested = append(g.NotTested, r.names(v.missing)...)
		}
	}
	g.Complete = len(g.NotTested) == 0
	g.Sample = g.Best == sampleGrade
	g.Cautions = r.cautions(t.ruled())
	if known == 0 {
		g.Best = ""
	}
	if g.Faults = t.faults(r); len(g.Faults) > 0 {
		g.Best, g.Sample, g.Complete, g.NotTested, worst = t.Below, true, true, nil, len(t.Names)
	}
	g.Open = worst < len(t.Names) && (!g.Complete || len(g.Cautions) > 0)
	g.Grade = g.claim()
	return g
}

// faults describes the observations that make the lot sample grade.
func (t *GradeTable) faults(r results) []message.Text {
	var out []message.Text
	for _, rule := range t.Sample {
		for _, id := range rule.Factors {
			if a, tested := r.recorded[id]; tested && a.Equal(Yes) {
				out = append(out, message.New("%s: such grain is %s (%s)", r.name(id), t.Below, rule.Source))
			}
		}
	}
	return out
}

// ruled are the faults that the table has a rule for.
func (t *GradeTable) ruled() []FactorID {
	var out []FactorID
	for _, rule := range t.Sample {
		out = append(out, rule.Factors...)
	}
	return out
}

func (t *GradeTable) name(i int) string {
	if i == len(t.Names) {
		return t.Below
	}
	return t.Names[i]
}

// claim limits the grade to what was tested.
func (g GradeResult) claim() message.Text {
	switch {
	case g.Best == "":
		return message.New("not graded")
	case g.Open:
		return message.New("no better than %s", g.Best)
	}
	return message.Words(g.Best)
}

// Words are the grade and its special words.
func (g GradeResult) Words() message.Text { return message.List(", ", g.Grade, listOf(g.Special)) }

// Message is the grade line: the grade, its special words, what is missing.
func (g GradeResult) Message() message.Text {
	if !g.Complete {
		return message.New("%s; not tested: %s", g.Words(), listOf(g.NotTested))
	}
	return g.Words()
}

// listOf lists names of factors and grades.
func listOf(names []string) message.Text {
	items := make([]any, len(names))
	for i, name := range names {
		items[i] = message.Words(name)
	}
	return message.List(", ", items...)
}

// String is the grade line in English.
func (g GradeResult) String() string { return g.Message().String() }
