package handbook

// Chapter is one chapter, read into blocks.
type Chapter struct {
	// ID is the name of its file without the ending: "shrink". It is the same
	// in every language.
	ID string
	// Language is that of the handbook, or English where the chapter is not written in it.
	Language string
	// Title is its first line.
	Title string
	// Text is the file as written.
	Text   string
	Blocks []Block
}

// order is the chapters in the order they are best read.
var order = []string{
	"start", "firstday", "truck", "bench", "rates", "shrink", "tickets", "checker", "growers", "money", "disputes", "day", "season",
	"keeping", "bins", "gear", "keyboard", "trouble", "cautions", "backup", "desks", "office", "glossary",
}

// forScreen maps a screen of the desk to its chapter; a screen not listed has a chapter of its own
// name, or the first.
var forScreen = map[string]string{
	"yard":    "truck",
	"load":    "truck",
	"setup":   "start",
	"keys":    "keyboard",
	"meters":  "bench",
	"samples": "bench",
	"making":  "rates",
}
