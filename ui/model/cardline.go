package model

// CardKind is the layout of a line on a card.
type CardKind int

// The kinds of line on a card.
const (
	CardPair    CardKind = iota // what at the left, how much at the right
	CardTotal                   // a pair people look for first, in bold
	CardTitle                   // large, in the middle
	CardMiddle                  // ordinary, in the middle
	CardText                    // running text at the left
	CardSmall                   // a pair or running text in small print
	CardRule                    // a ruled line across
	CardGap                     // an empty line
	CardMissing                 // a pair whose right part is missing
	CardMark                    // a pair or sentence that must be noticed
	CardHeading                 // the title of a part
)

// CardLine is one line of a card: of a grower, an edition, a working.
type CardLine struct {
	Kind  CardKind
	Left  string
	Right string
	Note  string // shown beside or below, small
}
