package ratefiles_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"tenthpoint/internal/law"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/ratefiles"
	"tenthpoint/internal/tomlfile"
)

// Every file of the program is one that its reader takes.
func TestShippedLawsAreSound(t *testing.T) {
	for _, f := range law.Shipped() {
		if err := ratefiles.CheckLaw(f); err != nil {
			t.Error(err)
		}
		if f.Citation == "" || f.How == "" {
			t.Errorf("%s does not say where it was read", f.Name)
		}
	}
	set, err := ratefiles.ReadLaws("")
	if err != nil || len(set.All()) != len(law.Shipped()) {
		t.Errorf("a house without files of its own: %v", err)
	}
}

// A file of the elevator goes before the program's from its first day on.
func TestHouseLawFollowsTheProgram(t *testing.T) {
	folder := t.TempDir()
	write(t, folder, strings.Replace(shippedText(t, "us-disputes"), `id = "us-disputes"`, "id = \"ours\"\nfrom = \"2027-01-01\"", 1))
	set, err := ratefiles.ReadLaws(folder)
	if err != nil {
		t.Fatal(err)
	}
	for day, want := range map[string]string{"2026-12-31": "us-disputes", "2027-01-01": "ours"} {
		f, ok := set.On(quantity.MustDate(day)).Find("us", "disputes", "")
		if !ok || f.ID != want {
			t.Errorf("on %s the rule is %v", day, f)
		}
	}
}

func write(t *testing.T, folder, text string) {
	t.Helper()
	if err := os.MkdirAll(filepath.Join(folder, "law"), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(folder, "law", "ours.toml"), []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
}

func shippedText(t *testing.T, id string) string {
	t.Helper()
	for _, f := range law.Shipped() {
		if f.ID == id {
			return string(f.Text)
		}
	}
	t.Fatalf("there is no file %s", id)
	return ""
}

// Each mistake is refused at its line, and alone: one edit of a good file, the
// line that the problem must show, and nothing else wrong.
func TestMistakesInLaws(t *testing.T) {
	for _, c := range []struct{ name, file, was, is, at string }{
		{"a key nobody knows", "us-grades-corn", `below = `, "belwo = \"x\"\nbelow = ", "belwo"},
		{"a bare number", "us-disputes", `days = "2"`, "days = 2", "days = 2"},
		{"no days at all", "us-retention", `days = "60"`, `days = "0"`, `days = "0"`},
		{"a factor the grain has not", "us-grades-corn", `factor = "bcfm"`, `factor = "splits"`, "splits"},
		{"a figure without its unit", "us-grades-corn", `"56.0 lb/bu"`, `"56.0"`, "figures = "},
		{"a figure in another unit", "us-grades-corn", `"56.0 lb/bu"`, `"56.0 %"`, "figures = "},
		{"a figure missing", "us-grades-corn", `"56.0 lb/bu", `, ``, "figures = "},
		{"a lower grade that is stricter", "us-grades-corn", `"54.0 lb/bu"`, `"57.0 lb/bu"`, "figures = "},
		{"no bound", "us-grades-corn", `bound = "least"`, `bound = "about"`, "about"},
		{"a grain there is not", "us-grades-corn", `subject = "corn"`, `subject = "maize"`, "maize"},
		{"a fault that is measured", "us-grades-corn", `present = ["musty",`, `present = ["flint",`, "present"},
		{"no fault", "us-grades-corn", `present = ["musty", "sour", "off-odor", "heating"]`, `present = []`, "present"},
		{"a whole that holds itself", "us-grades-corn", `parts = ["heat-damage"]`, `parts = ["damage"]`, "parts"},
		{"a condition in other words", "us-grades-corn", `flint at least 95 %`, `flint beyond 95 %`, "any"},
		{"a word without a way to it", "us-grades-soybeans", `any = ["garlic at least 5"]`, `any = []`, "any"},
		{"a rounding without a rule", "us-recording", `record = "1 down"`, `record = "1"`, `record = "1"`},
		{"a rule for no factor", "us-recording", `factors = ["smut"]`, `factors = ["smuts"]`, "smuts"},
		{"a rule for no grain", "us-recording", `"flaxseed"`, `"flax"`, "flax"},
		{"a bushel of no weight", "us-bushels", `weight = "56 lb/bu"`, `weight = "0 lb/bu"`, "weight"},
		{"two bushels of one grain", "us-bushels", `grain = "soybeans"`, `grain = "corn"`, `grain = "corn"`},
		{"classes that fall", "canada-moisture-classes", `tough = "13.5 %"`, `tough = "9.0 %"`, "tough"},
		{"a grain twice", "canada-moisture-classes", `name = "Peas"`, `name = "Sunflower seed"`, "Sunflower seed"},
		{"one end of a temperature", "canada-meter-tolerances", "sample_upto = \"30 °C\"\n", "", "[[rule]]"},
		{"a meter without a limit", "canada-meter-tolerances", "[[rule.limit]]\nfixed = \"0.2 pt\"\n", "", "[[rule]]"},
		{"a step of no divisions", "canada-scale-tolerances", `step = "800"`, `step = "0"`, `step = "0"`},
		{"a tolerance in pounds", "us-scale-tolerances", `one_upto = "500"`, `one_upto = "500 lb"`, "one_upto"},
		{"read in no known way", "us-disputes", `read = "read"`, `read = "heard"`, "heard"},
		{"an end before the beginning", "us-disputes", `read = "read"`, "read = \"read\"\nfrom = \"2026-02-01\"\nuntil = \"2026-01-01\"", "until"},
		{"a kind nobody reads", "us-disputes", `kind = "disputes"`, `kind = "quarrels"`, "quarrels"},
		{"a name that no ticket can keep", "us-disputes", `id = "us-disputes"`, `id = "Ours!"`, "Ours!"},
	} {
		text := shippedText(t, c.file)
		broken := strings.Replace(text, c.was, c.is, 1)
		if broken == text {
			t.Errorf("%s: %s does not say %q", c.name, c.file, c.was)
			continue
		}
		f, err := law.Open("x.toml", []byte(broken))
		if err == nil {
			err = ratefiles.CheckLaw(f)
		}
		problems, ok := err.(tomlfile.Problems)
		if !ok || len(problems) != 1 {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if p := problems[0]; p.Line == 0 || !strings.Contains(p.Excerpt, c.at) || p.Remedy.IsZero() {
			t.Errorf("%s: the problem is shown at line %d, %q, with the remedy %q", c.name, p.Line, p.Excerpt, p.Remedy)
		}
	}
}

// Files that each can be read and do not fit together.
func TestLawsThatClash(t *testing.T) {
	for name, text := range map[string]string{
		"the same id":   strings.Replace(shippedText(t, "us-disputes"), "read = \"read\"", "read = \"read\"\nfrom = \"2027-01-01\"", 1),
		"the same day":  strings.Replace(shippedText(t, "us-disputes"), `id = "us-disputes"`, `id = "ours"`, 1),
		"not TOML":      "[law\n",
		"a broken body": strings.Replace(shippedText(t, "us-disputes"), `id = "us-disputes"`, "id = \"ours\"\nfrom = \"2027-01-01\"", 1) + "more = \"x\"\n",
	} {
		folder := t.TempDir()
		write(t, folder, text)
		if _, err := ratefiles.ReadLaws(folder); err == nil {
			t.Errorf("%s is taken", name)
		}
	}
}
