package handbook

import "strings"

// readChapter reads the few forms of Markdown that the chapters are written in.
func readChapter(id, text string) Chapter {
	c := Chapter{ID: id, Text: text}
	r := &reader{lines: strings.Split(tied.Replace(text), "\n")}
	for !r.done() {
		if b, ok := r.block(); ok {
			c.Blocks = append(c.Blocks, b)
		}
	}
	for _, b := range c.Blocks {
		if b.Kind == Title {
			c.Title = b.Plain()
			break
		}
	}
	return c
}

// reader parses the lines of a chapter.
type reader struct {
	lines []string
	at    int
}

func (r *reader) done() bool { return r.at >= len(r.lines) }

func (r *reader) next() string {
	line := strings.TrimRight(r.lines[r.at], " \t")
	r.at++
	return line
}

// block reads the block that begins at this line; false for an empty
// line.
func (r *reader) block() (Block, bool) {
	line := r.next()
	switch {
	case line == "":
		return Block{}, false
	case strings.HasPrefix(line, "# "):
		return Block{Kind: Title, Text: spans(line[2:])}, true
	case strings.HasPrefix(line, "## "):
		return Block{Kind: Heading, Text: spans(line[3:])}, true
	case strings.HasPrefix(line, "- "):
		return Block{Kind: Bullet, Text: spans(r.gather(line[2:]))}, true
	case strings.HasPrefix(line, "> "):
		return Block{Kind: Caution, Text: spans(r.quoted(line[2:]))}, true
	case strings.HasPrefix(line, "|"):
		return Block{Kind: Table, Rows: r.table(line)}, true
	case line == "```":
		return Block{Kind: Sum, Lines: r.fenced()}, true
	}
	if number, rest, ok := numbered(line); ok {
		return Block{Kind: Step, Number: number, Text: spans(r.gather(rest))}, true
	}
	return Block{Kind: Paragraph, Text: spans(r.gather(line))}, true
}

// gather adds the lines that continue a paragraph or a point.
func (r *reader) gather(first string) string {
	for !r.done() && goesOn(r.lines[r.at]) {
		first += " " + strings.TrimSpace(r.next())
	}
	return first
}

// goesOn reports whether a line belongs to the block before it.
func goesOn(line string) bool {
	trimmed := strings.TrimSpace(line)
	if trimmed == "" {
		return false
	}
	if _, _, isStep := numbered(trimmed); isStep {
		return false
	}
	for _, begins := range []string{"# ", "## ", "- ", "> ", "|", "```"} {
		if strings.HasPrefix(trimmed, begins) {
			return false
		}
	}
	return true
}

func (r *reader) quoted(first string) string {
	for !r.done() && strings.HasPrefix(r.lines[r.at], "> ") {
		first += " " + strings.TrimSpace(r.next()[2:])
	}
	return first
}

// table reads rows of cells between bars, without the ruled row.
func (r *reader) table(first string) [][]string {
	rows := [][]string{cells(first)}
	for !r.done() && strings.HasPrefix(r.lines[r.at], "|") {
		row := cells(r.next())
		if strings.Trim(row[0], "-:") != "" {
			rows = append(rows, row)
		}
	}
	return rows
}

func cells(line string) []string {
	parts := strings.Split(strings.Trim(line, "|"), "|")
	for i := range parts {
		parts[i] = plain(strings.TrimSpace(parts[i]))
	}
	return parts
}

func (r *reader) fenced() []string {
	var lines []string
	for !r.done() {
		line := r.next()
		if line == "```" {
			break
		}
		lines = append(lines, line)
	}
	return lines
}

// numbered parts "3. Weigh it" into its number and its text.
func numbered(line string) (number, rest string, ok bool) {
	number, rest, ok = strings.Cut(line, ". ")
	if !ok || number == "" || len(number) > 2 || strings.Trim(number, "0123456789") != "" {
		return "", "", false
	}
	return number, rest, true
}
