package paper

// Block is a piece of a paper that stays whole when a page ends. Its marks are at
// places from its own top left corner.
type Block struct {
	Above  Length // room above, left out at the top of a page
	Height Length
	// Tied keeps the block on one page with the next, as a title is.
	Tied bool
	// Again is set before the block where it begins a page: the head of its table.
	Again *Block
	Marks
}

// Stacked is blocks as one, each under the one before.
func Stacked(blocks ...Block) Block {
	var out Block
	for i, b := range blocks {
		if i > 0 {
			out.Height += b.Above
		}
		out.Put(0, out.Height, b.Marks)
		out.Height += b.Height
	}
	return out
}

// Beside puts another block at the right of this one, from x on.
func (b *Block) Beside(x Length, other Block) {
	b.Put(x, 0, other.Marks)
	b.Height = max(b.Height, other.Height)
}

// Named notes that the block shows some facts.
func (b Block) Named(fields ...string) Block {
	for _, field := range fields {
		if field != "" {
			b.Areas = append(b.Areas, Area{Field: field, Bottom: b.Height})
		}
	}
	return b
}

// Summing notes that the block is one of those a paper is looked at for.
func (b Block) Summing() Block {
	b.Areas = append(b.Areas, Area{Bottom: b.Height, Sum: true})
	return b
}

// Tie keeps the first block of a part with its second, and the last with the one
// before, so that no line is left alone.
func Tie(blocks []Block) []Block {
	if n := len(blocks); n > 1 {
		blocks[0].Tied, blocks[n-2].Tied = true, true
	}
	return blocks
}
