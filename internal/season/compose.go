package season

import (
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
)

// Pictures are all pictures in their order: what came in, how wet a grain was, when trucks came and
// how long they waited, what the house took, and its meters.
func (f *Facts) Pictures(commodity string) []report.Picture {
	return []report.Picture{intake{f}.picture(), water{f}.picture(commodity), gate{f}.hoursPicture(), gate{f}.waitsPicture(), earned{f}.picture(), bench{f}.picture()}
}

// Paper is the season as a paper: the pictures, then the figures they are made of. Every grain that
// came in has its own picture of moistures, unless one grain is asked for.
func (f *Facts) Paper(p elevator.Profile, commodity string, made quantity.Date) report.Document {
	d := report.Of(p, made)
	d.Title, d.About = message.New("The season"), message.New("%s to %s", f.From, f.To)
	if f.Example {
		d.MarkExample()
	}
	grains := f.Grains()
	if commodity != "" {
		grains = []string{commodity}
	}
	for _, picture := range f.pagePictures(grains) {
		d.Blocks = append(d.Blocks, picture)
	}
	return f.withFigures(d, grains)
}

func (f *Facts) pagePictures(grains []string) []report.Picture {
	out := []report.Picture{intake{f}.picture(), gate{f}.hoursPicture(), gate{f}.waitsPicture(), earned{f}.picture(), bench{f}.picture()}
	for _, id := range grains {
		out = append(out, water{f}.picture(id))
	}
	return out
}

// section is a table under its name, with the sentence of its picture.
type section struct {
	says  message.Text
	table report.Table
}

// withFigures adds the tables.
func (f *Facts) withFigures(d report.Document, grains []string) report.Document {
	sections := []section{{intake{f}.picture().Says, intake{f}.table()}}
	for _, id := range grains {
		sections = append(sections, section{water{f}.picture(id).Says, water{f}.table(id)})
	}
	sections = append(sections,
		section{gate{f}.hoursPicture().Says, gate{f}.table()}, section{earned{f}.picture().Says, earned{f}.table()},
		section{bench{f}.picture().Says, bench{f}.table()}, section{message.Text{}, intake{f}.daily()})
	d.Blocks = append(d.Blocks, report.NewPage{})
	for _, one := range sections {
		d.Blocks = append(d.Blocks, report.Heading{Text: one.table.Name})
		if !one.says.IsZero() {
			d.Blocks = append(d.Blocks, report.Para{Text: one.says})
		}
		d.Blocks = append(d.Blocks, one.table)
	}
	return d
}
