package report

import (
	"strings"

	"tenthpoint/internal/i18n"
)

// A document is composed in English, with the language of its house noted, and
// said in that language by whatever sets it. So no rendering can forget to, and
// whoever reads the document itself, a screen or a program, finds the same words
// in every house.

// spoken is the document in its language.
func (d Document) spoken() Document {
	t := i18n.For(d.Language)
	if t == nil {
		return d
	}
	d.Title, d.About, d.Footer = t.Say(d.Title), t.Say(d.About), t.Say(d.Footer)
	d.Marks = each(d.Marks, t.Say)
	d.Blocks = each(d.Blocks, func(b Block) Block { return spokenBlock(b, t) })
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

func spokenBlock(b Block, t *i18n.Translator) Block {
	switch b := b.(type) {
	case Heading:
		b.Text = t.Say(b.Text)
		return b
	case Para:
		b.Text = t.Say(b.Text)
		return b
	case Pairs:
		return Pairs{each(b.Pairs, func(p Pair) Pair { return p.spoken(t) })}
	case Table:
		return b.spoken(t)
	case Bars:
		b.Title, b.Empty = t.Say(b.Title), t.Say(b.Empty)
		b.Labels, b.Values = each(b.Labels, t.Say), each(b.Values, t.Say)
		return b
	case Signing:
		return Signing{each(b.Names, t.Say)}
	}
	return b // steps are said by whoever knows what they are made of
}

func (p Pair) spoken(t *i18n.Translator) Pair {
	p.Label = t.Say(p.Label)
	if !p.Own {
		p.Value = t.Say(p.Value)
	}
	return p
}

func (b Table) spoken(t *i18n.Translator) Table {
	b.Empty, b.Parts = t.Say(b.Empty), each(b.Parts, t.Say)
	own := make([]bool, len(b.Columns))
	columns := make([]Column, len(b.Columns))
	for i, c := range b.Columns {
		words, unit := c.Words()
		c.Title = t.Say(words) + unit
		own[i], columns[i] = c.Own, c
	}
	b.Columns = columns
	b.Rows = each(b.Rows, func(r Row) Row {
		cells := make([]string, len(r.Cells))
		for i, cell := range r.Cells {
			cells[i] = cell
			if !own[i] || r.Kind == Total {
				cells[i] = t.Say(cell)
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

// units are what the figures of papers are in, each between blanks.
const units = " lb kg bu cwt t $ % pt lb/bu kg/hL "
