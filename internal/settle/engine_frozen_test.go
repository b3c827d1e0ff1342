package settle_test

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"maps"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/settle"
)

// freeze writes the golden file of an engine that has none yet. One that is
// there is never written again: the books in the field were made by it.
var freeze = flag.Int64("freeze", 0, "write the golden file of this engine, which must have none")

const (
	enginesFolder = "../../testdata/engines"
	// loadsAnEdition are the loads frozen under each edition.
	loadsAnEdition = 16
)

// frozenLoad is a load with what an engine made of it, one line of its golden
// file. The load is written out, so that no change to what draws random loads
// touches it, and so are the editions, in a folder of their own.
type frozenLoad struct {
	Edition  string
	Unit     string // of the scale
	Drafts   [][2]string
	Moisture string
	Findings [][3]string // factor, value, unit
	Price    string
	Owners   [][2]int64
	Deals    []string `json:",omitempty"` // of owners, as an oracleLoad has them
	Accepted []string

	// Digest and Figures are the SHA-256 of what the settlement digests and records. Refused are
	// the fields of the problems of a load that is not settled.
	Digest, Figures string   `json:",omitempty"`
	Refused         []string `json:",omitempty"`
	// Working is the digest in full, for one load of each edition.
	Working []string `json:",omitempty"`
}

// oracle is the load as the tests draw it.
func (f frozenLoad) oracle() oracleLoad {
	l := oracleLoad{unit: f.Unit, drafts: f.Drafts, moisture: f.Moisture, price: f.Price, owners: f.Owners, deals: f.Deals}
	for _, one := range f.Findings {
		l.findings = append(l.findings, oracleFinding{one[0], one[1], one[2]})
	}
	return l
}

// facts is the load as an engine reads it.
func (f frozenLoad) facts(e *rates.Edition) settle.Facts {
	settled := &oracleEdition{}
	settled.Units.Settle = e.Units.Settle.String()
	out := f.oracle().facts(settled)
	if f.Price != "" {
		out.Price = &settle.Price{Amount: quantity.Of(f.Price, quantity.Dollar.Per(e.Units.Settle)), Source: message.Words("test")}
	}
	out.Accepted = f.Accepted
	return out
}

// worked is the load with what an engine makes of it.
func (f frozenLoad) worked(n settle.Engine, e *rates.Edition) frozenLoad {
	f.Digest, f.Figures, f.Refused = "", "", nil
	s, err := n.Settle(f.facts(e), e)
	var problems settle.Problems
	switch {
	case errors.As(err, &problems):
		for _, p := range problems {
			f.Refused = append(f.Refused, p.Field)
		}
		f.Working = nil
	case err != nil:
		f.Refused = []string{err.Error()}
	default:
		f.Digest, f.Figures = sum(s.Digest()), sum(figureLines(s))
		if f.Working != nil {
			f.Working = strings.Split(s.Digest(), "\n")
		}
	}
	return f
}

func figureLines(s *settle.Settlement) string {
	var b strings.Builder
	figures := s.Figures()
	for _, id := range slices.Sorted(maps.Keys(figures)) {
		text, _ := figures[id].MarshalText()
		fmt.Fprintf(&b, "%s %s\n", id, text)
	}
	return b.String()
}

func sum(text string) string {
	hash := sha256.Sum256([]byte(text))
	return hex.EncodeToString(hash[:])
}

// frozenEditions are the editions an engine's golden file was made under, which may not change
// either. Those of format 2 came with the fourth engine.
func frozenEditions(t testing.TB, n settle.Engine) map[string]*rates.Edition {
	t.Helper()
	out := map[string]*rates.Edition{}
	folders := "/editions/*.toml"
	if n > 3 {
		folders = "/editions*/*.toml"
	}
	names, err := filepath.Glob(enginesFolder + folders)
	if err != nil || len(names) == 0 {
		t.Fatalf("found %d editions: %v", len(names), err)
	}
	for _, name := range names {
		e, err := rates.Read(filepath.Base(name), []byte(readText(t, name)))
		if err != nil {
			t.Fatal(err)
		}
		out[e.ID] = e
	}
	return out
}

func frozenFile(n settle.Engine) string {
	return fmt.Sprintf("%s/engine-%s.jsonl", enginesFolder, n)
}

// readFrozen reads the golden file of an engine.
func readFrozen(t testing.TB, n settle.Engine) []frozenLoad {
	t.Helper()
	var out []frozenLoad
	d := json.NewDecoder(strings.NewReader(readText(t, frozenFile(n))))
	for d.More() {
		var f frozenLoad
		if err := d.Decode(&f); err != nil {
			t.Fatal(err)
		}
		out = append(out, f)
	}
	return out
}

// thawed are the ways in which an engine no longer does what it did when it was
// frozen, a sentence a load.
func thawed(t testing.TB, n settle.Engine) []string {
	t.Helper()
	editions := frozenEditions(t, n)
	var out []string
	for i, was := range readFrozen(t, n) {
		is := was.worked(n, editions[was.Edition])
		if is.Digest != was.Digest || is.Figures != was.Figures || !slices.Equal(is.Refused, was.Refused) {
			out = append(out, fmt.Sprintf("load %d, edition %s: %s", i+1, was.Edition, parting(was, is)))
		}
	}
	return out
}

// parting names the first line on which two workings part.
func parting(was, is frozenLoad) string {
	if was.Working == nil || is.Working == nil {
		return fmt.Sprintf("digest %.8s was %.8s, figures %.8s were %.8s, refused for %v and was for %v", is.Digest, was.Digest, is.Figures, was.Figures, is.Refused, was.Refused)
	}
	for i := range min(len(was.Working), len(is.Working)) {
		if was.Working[i] != is.Working[i] {
			return fmt.Sprintf("%q was %q", is.Working[i], was.Working[i])
		}
	}
	return fmt.Sprintf("%d steps were %d, or other figures are written down", len(is.Working), len(was.Working))
}

// Every engine does for ever what it did on the day it was frozen: the steps, their ids and order,
// the exact figures and their roundings, what is recorded of a load, and which loads are refused.
func TestEnginesAreFrozen(t *testing.T) {
	freezeNow(t)
	for _, n := range settle.Engines() {
		loads := readFrozen(t, n)
		if want := loadsAnEdition * len(frozenEditions(t, n)); len(loads) != want {
			t.Errorf("engine %s is frozen by %d loads, want %d", n, len(loads), want)
		}
		for _, problem := range thawed(t, n) {
			t.Errorf("engine %s: %s\nAn engine that has settled loads is never changed. Put what is new into an engine of its own (engine.go).", n, problem)
		}
	}
}

// Whatever somebody changes in an engine, the golden file notices.
func TestAChangedEngineIsNoticed(t *testing.T) {
	for name, change := range map[string]func(*settle.Meddled){
		"a step more":            (*settle.Meddled).AddStep,
		"another digest":         (*settle.Meddled).ChangeDigest,
		"another order":          (*settle.Meddled).SwapStages,
		"another recording rule": (*settle.Meddled).RoundOtherwise,
		"a figure more":          (*settle.Meddled).RecordMore,
		"a reason to refuse":     (*settle.Meddled).RefuseMore,
	} {
		for _, n := range settle.Engines() {
			t.Run(name+", engine "+n.String(), func(t *testing.T) {
				settle.Meddle(t, n, change)
				if len(thawed(t, n)) == 0 {
					t.Error("the engine was changed and its golden file did not notice")
				}
			})
		}
	}
}

// freezeNow writes the golden file of an engine that has none.
func freezeNow(t *testing.T) {
	if *freeze == 0 {
		return
	}
	n := settle.Engine(*freeze)
	if _, err := os.Stat(frozenFile(n)); err == nil {
		t.Fatalf("engine %s is frozen; its golden file is never written again", n)
	}
	var b strings.Builder
	editions := frozenEditions(t, n)
	for _, id := range slices.Sorted(maps.Keys(editions)) {
		for _, f := range drawFrozen(t, n, editions[id]) {
			line, err := json.Marshal(f)
			if err != nil {
				t.Fatal(err)
			}
			b.Write(append(line, '\n'))
		}
	}
	if err := os.WriteFile(frozenFile(n), []byte(b.String()), 0o644); err != nil {
		t.Fatal(err)
	}
}

// drawFrozen draws the loads of one edition. The first that is settled keeps
// its working in full.
func drawFrozen(t *testing.T, n settle.Engine, e *rates.Edition) []frozenLoad {
	t.Helper()
	oracle := readOracleEdition(t, e.Text)
	r := rand.New(rand.NewPCG(uint64(n), 1))
	var out []frozenLoad
	whole := true
	for len(out) < loadsAnEdition {
		l := oracle.randomLoad(r)
		f := frozenLoad{Edition: e.ID, Unit: l.unit, Drafts: l.drafts, Moisture: l.moisture, Price: l.price, Owners: l.owners}
		if n > 3 {
			f.Deals = l.deals
		}
		for _, found := range l.findings {
			f.Findings = append(f.Findings, [3]string{found.factor, found.value, found.unit})
		}
		if len(out)%4 > 0 { // a refusal now and then
			for _, d := range oracle.Discount {
				f.Accepted = append(f.Accepted, d.name())
			}
		}
		if whole {
			f.Working = []string{}
		}
		f = f.worked(n, e)
		whole = whole && f.Digest == ""
		out = append(out, f)
	}
	return out
}

// The loads that froze an engine reach every kind of step it has, or a step
// could change unseen.
func TestFrozenLoadsReachEveryStep(t *testing.T) {
	for _, n := range settle.Engines() {
		seen := map[string]int{}
		editions := frozenEditions(t, n)
		refused := 0
		for _, f := range readFrozen(t, n) {
			s, err := n.Settle(f.facts(editions[f.Edition]), editions[f.Edition])
			if err != nil {
				refused++
				continue
			}
			for _, step := range s.Sheet.Steps() {
				seen[step.ID()]++
			}
		}
		charged := "charges"
		if n > 2 {
			charged = "services"
		}
		for _, id := range []string{"gross.2", "net.converted", "dockage", "clean", "shrink.water", "shrink.points", "handling", "drying", "drying.points",
			"factor." + string(grain.TestWeight), "bushels", "quantity", "value", charged, "payable", "share.1.net", "share.3.payable", "share.2." + charged} {
			if seen[id] == 0 {
				t.Errorf("engine %s: no frozen load has the step %s", n, id)
			}
		}
		if refused == 0 {
			t.Errorf("engine %s: no frozen load is refused", n)
		}
	}
}

// weighedText is the first engine's record of a load that is only weighed.
const weighedText = `gross.1|given|30000 lb|exact|30000 lb
tare.1|given|12000 lb|exact|12000 lb
gross.2|given|22000 lb|exact|22000 lb
tare.2|given|9010 lb|exact|9010 lb
gross|worked|52000 lb|exact|52000 lb
tare|worked|21010 lb|exact|21010 lb
net|worked|30990 lb|exact|30990 lb
net.converted|worked|14056.8275463 kg|1 half-up|14057 kg
bushel|rate|25.4012 kg/bu|exact|25.4012 kg/bu
bushels|worked|14057/25.4012 bu|0.01 half-up|553.4 bu
bushels 553.4 bu
gross 52000 lb
net 30990 lb
net.converted 14057 kg
tare 21010 lb
`

// Loads that are only weighed are frozen too.
func TestWeighedOnlyIsFrozen(t *testing.T) {
	drafts := []settle.Draft{{Name: "truck", Gross: quantity.Of("30000", quantity.Lb), Tare: quantity.Of("12000", quantity.Lb)},
		{Name: "trailer", Gross: quantity.Of("22000", quantity.Lb), Tare: quantity.Of("9010", quantity.Lb)}}
	out := settle.Outbound{Weight: quantity.Kg, Place: quantity.To("1", quantity.HalfUp), Bushels: quantity.To("0.01", quantity.HalfUp),
		Bushel: quantity.Of("25.4012", quantity.Kg.Per(quantity.Bushel)), BushelSource: "law"}
	want := map[settle.Engine]string{1: weighedText, 2: weighedText, 3: weighedText, 4: weighedText}
	for _, n := range settle.Engines() {
		w, err := n.WeighOnly(drafts, out)
		if err != nil {
			t.Fatal(err)
		}
		s := settle.Settlement{Engine: n, Sheet: w.Sheet}
		if got := s.Digest() + figureLines(&s); got != want[n] {
			t.Errorf("engine %s weighs a load as\n%s\nand weighed it as\n%s", n, got, want[n])
		}
	}
}
