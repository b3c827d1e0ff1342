package examiner_test

import (
	"crypto/sha256"
	"encoding/hex"
	"slices"
	"strings"
	"testing"

	"tenthpoint/internal/book/sqlite/sqlitetest"
	"tenthpoint/internal/dispute"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/office"
	"tenthpoint/internal/office/examiner"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/disputes"
	"tenthpoint/internal/scalehouse/housetest"
	"tenthpoint/internal/scalehouse/instruments"
)

// examined is a scene with something in every register.
func examined(t testing.TB) *scene {
	s := housetest.Workday(t)
	must(t, instruments.SetMeter(ctx, s.Desk, meter.Meter{ID: "M1", Model: "Example digital meter", Method: meter.Direct, Calibration: "2026-1"}))
	for _, day := range []string{"2026-09-20", "2026-10-01"} {
		must(t, instruments.CheckMeter(ctx, s.Desk, meter.Check{Day: quantity.MustDate(day), Meter: "M1", Calibration: "2026-1", Crop: "corn", Name: "R-1",
			Reference: quantity.Of("15.2", quantity.Percent), Reading: quantity.Of("15.3", quantity.Percent), By: housetest.Tester}))
	}
	s.At("2026-10-02 14:00")
	id := s.Whole()
	sample := housetest.SampleOf("18.0")
	sample.Kept, sample.Until, sample.Flags = "Shelf 3", quantity.MustDate("2026-10-05"), []load.Flag{load.OldFlag("cold: the sample was at 2 °C.")}
	must(t, scalehouse.RecordSample(ctx, s.Desk, id, sample))
	_, err := scalehouse.Issue(ctx, s.Desk, id)
	must(t, err)
	_, err = disputes.Raise(ctx, s.Desk, dispute.Raised{Ticket: 1, By: "Ada Field", About: "moisture", Claim: "drier at home"})
	must(t, err)
	must(t, scalehouse.Void(ctx, s.Desk, 2, "paid twice"))
	return s
}

func registers(s *scene, from, to string) map[string]report.Document {
	s.T.Helper()
	all, err := examiner.Registers(ctx, s.Desk, quantity.MustDate(from), quantity.MustDate(to))
	must(s.T, err)
	out := map[string]report.Document{}
	for _, r := range all {
		out[r.Name] = r.Paper
	}
	return out
}

func TestRegisterPapers(t *testing.T) {
	s := examined(t)
	all, err := examiner.Registers(ctx, s.Desk, housetest.Oct1, housetest.Oct2)
	must(t, err)
	var text strings.Builder
	for _, r := range all {
		text.WriteString("=== " + r.Name + " ===\n" + r.Paper.Text(110) + "\n")
	}
	housetest.Golden(t, "registers.txt", text.String())
}

func TestRegistersKeepToTheirPeriod(t *testing.T) {
	s := examined(t)
	for _, c := range []struct {
		from, to, register string
		rows               int
	}{
		{"2026-10-01", "2026-10-01", "tickets", 8}, {"2026-10-02", "2026-10-02", "tickets", 1}, {"2026-10-01", "2026-10-02", "tickets", 9}, {"2026-10-03", "2026-10-31", "tickets", 0},
		{"2026-10-01", "2026-10-01", "voids", 3}, {"2026-10-02", "2026-10-02", "voids", 1},
		{"2026-10-01", "2026-10-01", "overrides", 1}, {"2026-10-02", "2026-10-02", "overrides", 1},
		{"2026-09-01", "2026-10-01", "meter-checks", 2}, {"2026-10-01", "2026-10-02", "meter-checks", 1}, {"2026-08-01", "2026-08-31", "meter-checks", 0},
		{"2026-10-01", "2026-10-01", "samples", 0}, {"2026-10-02", "2026-10-02", "samples", 1},
		{"2026-10-01", "2026-10-01", "days-closed", 1}, {"2026-10-02", "2026-10-02", "days-closed", 0},
		{"2026-10-02", "2026-10-02", "disputes", 1}, {"2026-10-01", "2026-10-01", "disputes", 0},
	} {
		if got := len(registers(s, c.from, c.to)[c.register].Tables()[0].Rows); got != c.rows {
			t.Errorf("%s from %s to %s: %d rows, want %d", c.register, c.from, c.to, got, c.rows)
		}
	}
	_, err := examiner.Registers(ctx, s.Desk, housetest.Oct2, housetest.Oct1)
	refused(t, err, errortest.Invalid("2026-10-02", "2026-10-01"))
}

// A number that somebody took out of the lists is shown as missing, with the
// numbers around it.
func TestMissingNumberIsShown(t *testing.T) {
	s := examined(t)
	if text := registers(s, "2026-10-01", "2026-10-02")["tickets"].Text(200); !strings.Contains(text, "Numbers 1 to 9: 9 tickets, no number is missing.") {
		t.Errorf("a sound register says:\n%s", text)
	}
	sqlitetest.Unguarded(t, s.Store.Path(), "DELETE FROM loads WHERE ticket IN (4, 5)")
	text := registers(s, "2026-10-01", "2026-10-02")["tickets"].Text(200)
	for _, want := range []string{"Numbers 1 to 9: 7 tickets, 2 NUMBERS ARE MISSING.", "4 to 5", "NUMBER MISSING"} {
		if !strings.Contains(text, want) {
			t.Errorf("does not say %q:\n%s", want, text)
		}
	}
	if sheet := s.DayPaper(housetest.Oct1).Text(200); !strings.Contains(sheet, "NOT OF THIS DAY: 4 to 5") {
		t.Errorf("the day sheet does not miss them:\n%s", sheet)
	}
}

// The set is whole: every file is in the index and in the hashes, the hashes are
// those of the bytes, and the same book gives the same set.
func TestExamineWritesAWholeSet(t *testing.T) {
	s := examined(t)
	var told []string
	files, err := examiner.Papers(ctx, s.Desk, housetest.Oct1, housetest.Oct2, report.Page{}, func(name string) { told = append(told, name) })
	must(t, err)
	var names []string
	content := map[string]string{}
	for _, f := range files {
		names = append(names, f.Name)
		content[f.Name] = string(f.Bytes)
	}
	for _, want := range []string{"registers/tickets.pdf", "registers/tickets.csv", "registers/voids.pdf", "registers/overrides.csv", "registers/samples.pdf",
		"registers/meter-checks.csv", "registers/days-closed.pdf", "registers/disputes.csv", "days/2026-10-01.pdf", "days/2026-10-02.pdf", "journal.txt"} {
		if !slices.Contains(names, want) || !slices.Contains(told, want) {
			t.Errorf("%s is not in the set", want)
		}
	}
	rates := slices.IndexFunc(names, func(n string) bool { return strings.HasPrefix(n, "rates/corn-house-2026-") })
	if rates < 0 || content[names[rates]] != housetest.HouseCorn {
		t.Error("the rates are not in the set as they were read")
	}
	if names[len(names)-2] != examiner.IndexFile || names[len(names)-1] != examiner.HashesFile {
		t.Errorf("the set ends with %q", names[len(names)-2:])
	}
	listed := strings.Split(strings.TrimSuffix(content[examiner.HashesFile], "\n"), "\n")
	if len(listed) != len(files)-1 {
		t.Errorf("%d hashes for %d files", len(listed), len(files)-1)
	}
	for _, line := range listed {
		sum, name, _ := strings.Cut(line, "  ")
		own := sha256.Sum256([]byte(content[name]))
		if sum != hex.EncodeToString(own[:]) {
			t.Errorf("the hash of %s is not its own", name)
		}
		if name != examiner.IndexFile && !strings.Contains(content[examiner.IndexFile], name+"\n") {
			t.Errorf("%s is not in the index", name)
		}
	}
	again, err := examiner.Papers(ctx, s.Desk, housetest.Oct1, housetest.Oct2, report.Page{}, nil)
	must(t, err)
	for i := range files {
		if string(again[i].Bytes) != string(files[i].Bytes) {
			t.Errorf("%s differs the second time", files[i].Name)
		}
	}
}

// A book from elsewhere may call its rates what it likes: the set stays in its
// folder.
func TestExamineSetStaysInItsFolder(t *testing.T) {
	s := examined(t)
	sqlitetest.Unguarded(t, s.Store.Path(), `UPDATE editions SET id = '../../../' || char(10) || 'OUT\x'`)
	files, err := examiner.Papers(ctx, s.Desk, housetest.Oct1, housetest.Oct2, report.Page{}, nil)
	must(t, err)
	found := false
	for _, f := range files {
		found = found || strings.HasPrefix(f.Name, "rates/")
		if strings.Contains(f.Name, "..") || strings.ContainsAny(f.Name, "\\\n") || strings.Count(f.Name, "/") > 1 {
			t.Errorf("the set holds a file %q", f.Name)
		}
	}
	if !found {
		t.Error("the rates are not in the set")
	}
}

// Registers and statement say which ticket is in place of which.
func TestReissueInRegistersAndStatement(t *testing.T) {
	s := housetest.New(t)
	housetest.Reissued(s)
	papers := registers(s, "2026-10-01", "2026-10-01")
	account, err := office.Statement(ctx, s.Desk, "G1", quantity.Date{}, quantity.Date{})
	must(t, err)
	for name, want := range map[string]string{
		papers["tickets"].Text(200): "void 2026-10-01, reissued as 2", papers["voids"].Text(200): "reissued as 2",
		papers["tickets"].Text(201): "issued, in place of 1 (void)", account.Text(200): "in place of 1 (void)", account.Text(201): "1 load",
	} {
		if !strings.Contains(name, want) {
			t.Errorf("%q is not said:\n%s", want, name)
		}
	}
}
