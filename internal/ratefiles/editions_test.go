package ratefiles_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"tenthpoint/internal/message"
	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/ratefiles"
	"tenthpoint/internal/scalehouse/housetest"
)

func TestOwnRatesTakeTheExamplesPlace(t *testing.T) {
	folder := t.TempDir()
	day := quantity.MustDate("2026-10-01")
	examples, err := ratefiles.ReadRates("")
	housetest.Must(t, err)
	example, err := examples.On("main", "corn", day)
	housetest.Must(t, err)
	own := strings.NewReplacer(`"corn-house-2026"`, `"our-corn"`, `schedule = "house"`, `schedule = "main"`).Replace(housetest.HouseCorn)
	for name, place := range map[string]string{"in the folder": folder, "in its editions": filepath.Join(folder, "editions")} {
		housetest.Must(t, os.MkdirAll(place, 0o755))
		file := filepath.Join(place, "our-corn.toml")
		housetest.Must(t, os.WriteFile(file, []byte(own), 0o644))
		set, err := ratefiles.ReadRates(folder)
		housetest.Must(t, err)
		ours, err := set.On("main", "corn", day)
		housetest.Must(t, err)
		if ours.ID != "our-corn" || example.ID == ours.ID {
			t.Errorf("%s: corn is settled under %s", name, ours.ID)
		}
		if _, err := set.On("main", "soybeans", day); err != nil {
			t.Errorf("%s: the example for soybeans is gone: %v", name, err)
		}
		housetest.Must(t, os.Remove(file))
	}
}

// A correction may lie in the subfolder while what it corrects lies above it.
func TestOwnRatesAreOneSet(t *testing.T) {
	folder := t.TempDir()
	housetest.Must(t, os.MkdirAll(filepath.Join(folder, "editions"), 0o755))
	housetest.Must(t, os.WriteFile(filepath.Join(folder, "corn.toml"), []byte(housetest.HouseCorn), 0o644))
	mended := strings.Replace(housetest.HouseCorn, `id = "corn-house-2026"`, "id = \"corn-house-2026-b\"\ncorrects = \"corn-house-2026\"", 1)
	place := filepath.Join(folder, "editions", "corn-b.toml")
	housetest.Must(t, os.WriteFile(place, []byte(mended), 0o644))
	set, err := ratefiles.ReadRates(folder)
	housetest.Must(t, err)
	if e, err := set.On("house", "corn", quantity.MustDate("2026-10-01")); err != nil || e.ID != "corn-house-2026-b" {
		t.Errorf("corn is settled under %v, %v", e, err)
	}
	housetest.Must(t, os.Remove(filepath.Join(folder, "corn.toml")))
	_, err = ratefiles.ReadRates(folder)
	housetest.Refused(t, err, errortest.Invalid(place+":4"))
	housetest.Refused(t, err, errortest.Invalid("corn-house-2026"))
}

func TestBrokenRatesAreNamed(t *testing.T) {
	folder := t.TempDir()
	housetest.Must(t, os.WriteFile(filepath.Join(folder, "a.toml"), []byte("= no"), 0o644))
	housetest.Must(t, os.WriteFile(filepath.Join(folder, "b.toml"), []byte("x = 1"), 0o644))
	_, err := ratefiles.ReadRates(folder)
	housetest.Refused(t, err, errortest.Invalid(filepath.Join(folder, "a.toml")+":1"))
	housetest.Refused(t, err, errortest.Invalid(filepath.Join(folder, "b.toml")+":1"))
	_, err = ratefiles.ReadRates(filepath.Join(folder, "a.toml"))
	housetest.Refused(t, err, errortest.Kind(message.Storage))
	if set, err := ratefiles.ReadRates(filepath.Join(folder, "not there")); err != nil || len(set.All()) == 0 {
		t.Errorf("a folder that is not there: %v", err)
	}
}
