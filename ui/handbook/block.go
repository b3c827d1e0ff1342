package handbook

// Kind is the layout of a block.
type Kind int

// The kinds of block.
const (
	Title     Kind = iota // the chapter's own heading
	Heading               // of a section
	Paragraph             // running text
	Bullet                // one point of a list
	Step                  // one numbered step; Number is its number
	Table                 // Rows, the first of them the headings
	Sum                   // Lines of a worked sum, in letters of equal width or aligned
	Caution               // to be read before anything is done
)

// Block is one piece of a chapter.
type Block struct {
	Kind   Kind
	Number string // of a Step: "1"
	Text   []Span
	Rows   [][]string // of a Table
	Lines  []string   // of a Sum
}

// Span is a run of text in one style.
type Span struct {
	Text string
	Bold bool // a word of the screen, a key, a word of a file, another chapter
	// Chapter is the id of the chapter the words name; empty for other words.
	Chapter string
}

// Plain returns the block's words without styles, for searching.
func (b Block) Plain() string {
	out := ""
	for _, s := range b.Text {
		out += s.Text
	}
	for _, row := range b.Rows {
		for _, cell := range row {
			out += cell + " "
		}
	}
	for _, line := range b.Lines {
		out += line + " "
	}
	return out
}
