package report

import (
	"bytes"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/xuri/excelize/v2"

	"tenthpoint/internal/message"
	"tenthpoint/internal/paper/pdf/pdfwords"
)

// french is a paper of an elevator that speaks French.
func french() Document {
	return Document{
		House: []string{"Corn and Oats Elevator"}, Title: message.New("Day sheet"), About: message.New("as of %s", "2026-10-03"), Language: "fr",
		Blocks: []Block{
			Pairs{[]Pair{{Label: message.New("Tickets"), Value: message.New("no load")}, {Label: message.New("Remark"), Value: message.Name("Corn")}}},
			Table{Name: message.List(" ", "grain", message.Own("lb")), Columns: []Column{{Title: message.New("Commodity")}, {Title: message.New("Grower")}, {Title: message.New("Net"), Unit: "lb", Align: Right}},
				Rows: []Row{{Cells: []message.Text{message.New("Corn"), message.Name("Barley"), Figure("52,300")}}, {Cells: []message.Text{message.New("All %s", "Corn"), message.New("no load"), Figure("52,300")}, Kind: Total}}},
			Table{Name: message.New("numbers"), Empty: message.New("No load was rejected.")},
		},
	}
}

// Whatever sets a paper says it in the language of its elevator; what is somebody's own stays, and
// the composed paper stays English.
func TestEveryRenderingIsInTheLanguage(t *testing.T) {
	d := french()
	want := []string{"Feuille de journée", "en date du 2026-10-03", "aucun chargement", "Maïs", "Tout Maïs", "Barley", "52\u202f300", "Aucun chargement n'a été refusé."}
	pdf, err := d.PDF(Page{})
	if err != nil {
		t.Fatal(err)
	}
	pages, err := pdfwords.Pages(pdf)
	if err != nil {
		t.Fatal(err)
	}
	printed := strings.Join(slices.Concat(pages...), " ")
	for _, words := range append(want, "page 1 de 1", "Corn and Oats Elevator") {
		if !strings.Contains(printed, words) {
			t.Errorf("the pages lack %q:\n%s", words, printed)
		}
	}
	text := d.Text(80)
	for _, words := range append(want[1:], "FEUILLE DE JOURNÉE", "Remarque  Corn") {
		if !strings.Contains(text, words) {
			t.Errorf("the text lacks %q:\n%s", words, text)
		}
	}
	var lines bytes.Buffer
	if err := d.CSV(&lines, d.Tables()[0]); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff("Grain,Producteur,Net lb\nMaïs,Barley,52300\nTout Maïs,aucun chargement,52300\n", lines.String()); diff != "" {
		t.Errorf("the lines differ (-want +got):\n%s", diff)
	}
	if diff := cmp.Diff(french(), d); diff != "" {
		t.Errorf("setting the paper changed it (-before +after):\n%s", diff)
	}
}

// A workbook's sheets are called in the language too.
func TestWorkbookIsInTheLanguage(t *testing.T) {
	var out bytes.Buffer
	if err := french().XLSX(&out); err != nil {
		t.Fatal(err)
	}
	book, err := excelize.OpenReader(&out)
	if err != nil {
		t.Fatal(err)
	}
	defer book.Close()
	if diff := cmp.Diff([]string{"Ce papier", "1 grain lb", "2 numéros"}, book.GetSheetList()); diff != "" {
		t.Errorf("the sheets differ (-want +got):\n%s", diff)
	}
	if cell, err := book.GetCellValue("1 grain lb", "A2"); err != nil || cell != "Maïs" {
		t.Errorf("the first cell is %q, %v", cell, err)
	}
}
