package settle_test

import (
	"math/rand/v2"
	"testing"

	"tenthpoint/internal/rates"
	"tenthpoint/internal/settle"
)

// FuzzEdition changes editions letter by letter. A text that is still read as
// an edition settles loads or refuses them with sentences; it never stops the
// program, and nobody is paid less than nothing.
func FuzzEdition(f *testing.F) {
	for _, text := range editionFiles(f) {
		f.Add(string(text), uint64(1))
	}
	f.Add(readText(f, "../../testdata/rates/good/barley-full.toml"), uint64(2))
	f.Add(readText(f, "../../testdata/rates/good/corn-points.toml"), uint64(3))
	f.Fuzz(func(t *testing.T, text string, load uint64) {
		engine, err := rates.Read("fuzz.toml", []byte(text))
		if err != nil {
			return
		}
		e := readOracleEdition(t, []byte(text))
		r := rand.New(rand.NewPCG(load, 4))
		for range 3 {
			s, err := settle.Settle(e.randomLoad(r).facts(e), engine)
			switch problems, refused := err.(settle.Problems); {
			case refused && len(problems) == 0, !refused && err != nil:
				t.Errorf("refused without a sentence: %v", err)
			case err == nil && s.Payable.Value().Sign() < 0:
				t.Errorf("payable is %s", s.Payable.Printed())
			case err == nil && s.Settled.Value().Sign() <= 0:
				t.Errorf("settled weight is %s", s.Settled.Printed())
			}
		}
	})
}
