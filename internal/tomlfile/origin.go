package tomlfile

import "tenthpoint/internal/quantity"

// Origin is the author and publication of the rules of a file.
type Origin struct {
	Issued   quantity.Date
	By       string
	Document string
	Note     string
}

// Origin reads the table "origin" of a file, which must have one.
func (f *File) Origin() Origin {
	t, _ := f.root.Table("origin", true)
	return Origin{Issued: t.Date("issued"), By: t.Text("by"), Document: t.Text("document"), Note: t.OptionalText("note")}
}
