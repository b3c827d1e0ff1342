package older

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"tenthpoint/internal/transcript"
)

func TestEveryRecipeHasItsBook(t *testing.T) {
	folder := filepath.Join("..", "..", "..", booksFolder)
	paths, err := filepath.Glob(filepath.Join(folder, "*.recipe"))
	if err != nil || len(paths) == 0 {
		t.Fatal(paths, err)
	}
	var names []string
	for _, path := range paths {
		r, err := readRecipe(path)
		if err != nil {
			t.Error(err)
		}
		if len(r.seed) == 0 && len(r.commands) == 0 {
			t.Errorf("%s makes nothing", path)
		}
		for _, made := range []string{".book.gz", ".said.gz"} {
			if _, err := os.Stat(filepath.Join(folder, r.name+made)); err != nil {
				t.Error(err)
			}
		}
		names = append(names, r.name)
	}
	for _, step := range []string{"step2", "step3", "step4", "step5", "step6", "season", "step8", "step9", "step10", "step11"} {
		if !slices.Contains(names, step) {
			t.Errorf("no recipe %s", step)
		}
	}
}

func TestReadRecipe(t *testing.T) {
	path := filepath.Join(t.TempDir(), "some.recipe")
	text := "# about\nrevision 177e19b\nasked 538a206b\nseed season.go.txt 20 2\nfile a.csv\n> x,y\n> 1,2\nnow 2026-10-01 13:00\n$ tenth verify\n"
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	r, err := readRecipe(path)
	if err != nil {
		t.Fatal(err)
	}
	if r.name != "some" || r.revision != "177e19b" || r.asked != "538a206b" || !slices.Equal(r.seed, []string{"season.go.txt", "20", "2"}) || r.files["a.csv"] != "x,y\n1,2\n" {
		t.Errorf("%+v", r)
	}
	if len(r.commands) != 1 || r.commands[0].Line() != "tenth verify" || r.commands[0].Now != "2026-10-01 13:00" {
		t.Errorf("%+v", r.commands)
	}
}

func TestScriptsAreDrawnAgain(t *testing.T) {
	text := func(i int) string {
		var b strings.Builder
		if err := transcript.Write(&b, randomScript(drawing(7, "script", i))); err != nil {
			t.Fatal(err)
		}
		return b.String()
	}
	if text(1) != text(1) {
		t.Error("one key drew two scripts")
	}
	setups := map[string]bool{}
	for i := range 20 {
		first, _, _ := strings.Cut(text(i), "\n$ tenth person")
		setups[first] = true
	}
	if len(setups) != len(houses) {
		t.Errorf("20 scripts are of %d kinds of house, of %d there are", len(setups), len(houses))
	}
}

func TestRandomLoadsNameTheirRow(t *testing.T) {
	editions := []offer{{ID: "a", Commodity: "corn", Schedule: "main", From: "2025-08-01", factors: []string{"test-weight", "bcfm"}}}
	table := randomLoads(drawing(7, "loads", 1), editions, 50)
	if len(table) != 51 || !slices.Equal(table[0], append(slices.Clone(columns), "factor.test-weight", "factor.bcfm")) {
		t.Fatalf("%d rows, %q", len(table), table[0])
	}
	if table[1][0] != "2" || table[50][0] != "51" {
		t.Errorf("%q %q", table[1], table[50])
	}
}

func TestByRow(t *testing.T) {
	rows, err := byRow(transcript.Entry{
		Out: "load,net\n2,100\n4,300\n",
		Err: "error: loads.csv row 3, column price: no.\nhint: Type it.\nerror: loads.csv row 5: no.\n",
	})
	if err != nil {
		t.Fatal(err)
	}
	if rows["4"].Out != "load: 4\nnet: 300\n" || rows["3"].Err != "error: loads.csv row 3, column price: no.\nhint: Type it.\n" || rows["5"].Err == "" {
		t.Errorf("%+v", rows)
	}
	if _, err := byRow(transcript.Entry{Err: "error: nothing"}); err == nil {
		t.Error("a batch that said nothing was taken")
	}
}

func TestARevisionThatIsNotThere(t *testing.T) {
	err := unpackRevision("no-such-revision", t.TempDir())
	if err == nil || !strings.Contains(err.Error(), "does not hold the revision no-such-revision") {
		t.Error(err)
	}
}

func TestSpread(t *testing.T) {
	for _, c := range []struct {
		most int
		want []int
	}{{9, []int{1, 2, 3, 4, 5}}, {3, []int{1, 3, 5}}, {1, []int{1}}} {
		if got := spread([]int{1, 2, 3, 4, 5}, c.most); !slices.Equal(got, c.want) {
			t.Errorf("%d: %v", c.most, got)
		}
	}
}
