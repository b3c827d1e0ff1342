package season

import (
	"slices"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
)

// Composed is what is shown of a season: its pictures for each grain whose moistures may be asked for, and
// its paper. The loads they are made of, hundreds of megabytes in a large house, are not kept.
type Composed struct {
	Day    quantity.Date
	Grains []string
	Paper  report.Document

	pictures map[string][]report.Picture
}

// Compose draws everything that may be shown of the season; the paper is made on a day.
func (f *Facts) Compose(p elevator.Profile, made quantity.Date) *Composed {
	c := &Composed{Day: f.Day, Grains: f.Grains(), Paper: f.Paper(p, "", made), pictures: map[string][]report.Picture{"": f.Pictures("")}}
	for _, id := range c.Grains { // but for the moistures the pictures are those of every grain
		c.pictures[id] = slices.Clone(c.pictures[""])
		c.pictures[id][moistures] = water{f}.picture(id)
	}
	return c
}

// Pictures are those of [Facts.Pictures]; a grain that did not come in has those of none.
func (c *Composed) Pictures(commodity string) []report.Picture {
	if pictures, there := c.pictures[commodity]; there {
		return pictures
	}
	return c.pictures[""]
}

// moistures is the place of the picture of a grain's moistures among all.
const moistures = 1

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
