package terminal

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"

	"tenthpoint/internal/atomicfile"
	"tenthpoint/internal/message"
	"tenthpoint/internal/report"
)

// DocumentFlags say how a paper of several parts is shown: on the terminal, for
// programs, or as files.
type DocumentFlags struct {
	Out   string   `help:"Write it into this folder instead of showing it." placeholder:"DIR" group:"paper"`
	As    []string `help:"What to write: pdf, text, xlsx, csv (a file for each table)." enum:"pdf,text,xlsx,csv" default:"pdf" group:"paper"`
	Sheet string   `help:"Size of the PDF's pages." enum:"letter,a4" default:"letter" group:"paper"`
	Width Width    `help:"Width of the text, in letters; wider tables are folded. Without it, 100, and tables are folded on a screen alone." group:"paper"`
	JSON  bool     `help:"Print for programs: every cell as text."`
}

// ShowDocument prints a paper, or writes its files under a name and prints their names.
func (p *Session) ShowDocument(f DocumentFlags, d report.Document, name string, landscape bool) error {
	if f.Out == "" {
		if f.JSON {
			return p.PrintJSON(documentJSON(d))
		}
		fmt.Fprint(p.Stdout, f.text(d, p.Screen))
		return nil
	}
	if err := atomicfile.MakeFolder(f.Out); err != nil {
		return Refusal("Name another folder with --out", "the folder %s cannot be made: %v", f.Out, err)
	}
	for _, as := range f.As {
		files, err := f.render(d, name, as, landscape)
		if err != nil {
			return err
		}
		for _, file := range files {
			path := filepath.Join(f.Out, file.name)
			if err := WriteNew(path, file.bytes); err != nil {
				return err
			}
			p.Say("%s", path)
		}
	}
	return nil
}

// LogFlags say how the log of an instrument is shown: on the terminal, or as PDF and as text.
type LogFlags struct {
	Out   string `help:"Write it into this folder, as PDF and as text." placeholder:"DIR"`
	Width Width  `help:"Width of the text, in letters." default:"100"`
}

// ShowLog prints a log, or writes its files under a name with the day and prints their names.
func (p *Session) ShowLog(f LogFlags, d report.Document, name string) error {
	text := d.Text(int(f.Width))
	if f.Out == "" {
		fmt.Fprint(p.Stdout, text)
		return nil
	}
	pdf, err := d.PDF(report.PageFor(p.Profile().Rules))
	if err != nil {
		return err
	}
	files, err := p.Files(f.Out, name+"-"+p.Today().String(), pdf, []byte(text))
	for _, file := range files {
		p.Say("Written: %s", file)
	}
	return err
}

// text is a paper as text. A width that was asked for folds tables, and so does a screen.
func (f DocumentFlags) text(d report.Document, screen bool) string {
	switch {
	case f.Width != 0:
		return d.Folded(int(f.Width))
	case screen:
		return d.Folded(usualWidth)
	}
	return d.Text(usualWidth)
}

// usualWidth is the width of a paper's text.
const usualWidth = 100

type namedBytes struct {
	name  string
	bytes []byte
}

func (f DocumentFlags) render(d report.Document, name, as string, landscape bool) ([]namedBytes, error) {
	var out bytes.Buffer
	switch as {
	case "pdf":
		pdf, err := d.PDF(report.Page{Paper: report.Paper(f.Sheet), Landscape: landscape})
		return []namedBytes{{name + ".pdf", pdf}}, err
	case "xlsx":
		err := d.XLSX(&out)
		return []namedBytes{{name + ".xlsx", out.Bytes()}}, err
	case "text":
		return []namedBytes{{name + ".txt", []byte(f.text(d, false))}}, nil
	}
	var files []namedBytes
	for i, t := range d.Tables() {
		var one bytes.Buffer
		if err := d.CSV(&one, t); err != nil {
			return nil, err
		}
		files = append(files, namedBytes{fmt.Sprintf("%s-%d-%s.csv", name, i+1, FileName(t.Name.String())), one.Bytes()})
	}
	return files, nil
}

// FileName makes a table's name valid on every file system.
func FileName(name string) string {
	out := []rune(name)
	for i, r := range out {
		if r < '0' || r > '9' && r < 'A' || r > 'Z' && r < 'a' || r > 'z' {
			out[i] = '-'
		}
	}
	return string(out)
}

// WriteNew writes a file that must not exist yet: paper once issued is not overwritten.
func WriteNew(path string, content []byte) error {
	err := atomicfile.Create(path, content)
	if errors.Is(err, fs.ErrExist) {
		return Refusal("Name another folder with --out, or move the file away", "%s is there already and is not written over", path)
	}
	return err
}

// documentJSON is a paper for programs: its tables with each cell under its
// title.
func documentJSON(d report.Document) any {
	type table struct {
		Name string              `json:"name"`
		Rows []map[string]string `json:"rows"`
	}
	out := struct {
		Title  message.Text   `json:"title"`
		About  message.Text   `json:"about"`
		Marks  []message.Text `json:"marks,omitempty"`
		Tables []table        `json:"tables"`
	}{Title: d.Title, About: d.About, Marks: d.Marks, Tables: []table{}}
	for _, t := range d.Tables() {
		one := table{Name: t.Name.String(), Rows: []map[string]string{}}
		for _, r := range t.Rows {
			cells := map[string]string{"kind": kinds[r.Kind]}
			for i, cell := range r.Cells {
				cells[t.Columns[i].String()] = cell.String()
			}
			one.Rows = append(one.Rows, cells)
		}
		out.Tables = append(out.Tables, one)
	}
	return out
}

var kinds = map[report.RowKind]string{report.Plain: "line", report.Total: "total", report.Struck: "struck"}
