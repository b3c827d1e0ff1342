package report

import (
	"strings"

	"tenthpoint/internal/i18n"
)

// A document is composed in English, with the language of its elevator noted, and translated by its
// renderers. So no rendering can forget to, and a reader of the document itself, a screen or a
// program, finds the same words everywhere.

// translate translates an English text.
type translate func(english string) string

// forPeople is the document in its language, with the signs of the language in its
// figures.
func (d Document) forPeople() Document { return d.spoken(i18n.In(d.Language).Word) }

// forPrograms is the document in its language, with figures as programs read them.
func (d Document) forPrograms() Document { return d.spoken(i18n.For(d.Language).Say) }

func (d Document) spoken(say translate) Document {
	d.Title, d.About, d.Footer = say(d.Title), say(d.About), say(d.Footer)
	d.Marks = each(d.Marks, say)
	d.Blocks = each(d.Blocks, func(b Block) Block { return spokenBlock(b, say) })
	d.Language = ""
	return d
}

// each is a list with something done to each of it.
func each[T any](list []T, do func(T) T) []T {
	out := make([]T, len(list))
	for i, one := range list {
		out[i] = do(one)
	}
	return out
}

func spokenBlock(b Block, say translate) Block {
	switch b := b.(type) {
	case Heading:
		b.Text = say(b.Text)
		return b
	case Para:
		b.Text = say(b.Text)
		return b
	case Pairs:
		return Pairs{each(b.Pairs, func(p Pair) Pair { return p.spoken(say) })}
	case Table:
		return b.spoken(say)
	case Bars:
		b.Title, b.Empty = say(b.Title), say(b.Empty)
		b.Labels, b.Values = each(b.Labels, say), each(b.Values, say)
		return b
	case Signing:
		return Signing{each(b.Names, say)}
	}
	return b // steps are translated by their composer
}

func (p Pair) spoken(say translate) Pair {
	p.Label = say(p.Label)
	if !p.Own {
		p.Value = say(p.Value)
	}
	return p
}

func (b Table) spoken(say translate) Table {
	b.Empty, b.Parts = say(b.Empty), each(b.Parts, say)
	own := make([]bool, len(b.Columns))
	columns := make([]Column, len(b.Columns))
	for i, c := range b.Columns {
		words, unit := c.Words()
		c.Title = say(words) + unit
		own[i], columns[i] = c.Own, c
	}
	b.Columns = columns
	b.Rows = each(b.Rows, func(r Row) Row {
		cells := make([]string, len(r.Cells))
		for i, cell := range r.Cells {
			cells[i] = cell
			if !own[i] || r.Kind == Total {
				cells[i] = say(cell)
			}
		}
		r.Cells = cells
		return r
	})
	return b
}

// Words are the words of a column's title, and the unit after them with the
// blank between, which is the same in every language.
func (c Column) Words() (words, unit string) {
	at := strings.LastIndex(c.Title, " ")
	if at > 0 && strings.Contains(units, c.Title[at:]+" ") {
		return c.Title[:at], c.Title[at:]
	}
	return c.Title, ""
}

// units are the units of figures on papers, each between blanks.
const units = " lb kg bu cwt t $ % pt lb/bu kg/hL "
