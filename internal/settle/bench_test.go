package settle_test

import (
	"testing"

	"tenthpoint/internal/settle"
)

// One load with every line a busy ticket has. At least 20,000 a second are
// wanted on one core: 50 µs each.
func BenchmarkSettle(b *testing.B) {
	e := shipped(b, "corn-main-2026")
	f := corn("52300", "18.34", with("test-weight", "53.2 lb/bu"), with("damage", "6.1 %"), with("bcfm", "3.4 %"),
		with("musty", "no"), with("heating", "no"), at("4.15 $/bu"))
	b.ReportAllocs()
	for b.Loop() {
		if _, err := settle.Settle(f, e); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkSettleShared(b *testing.B) {
	e := shipped(b, "wheat-hrw-main-2025")
	f := corn("52300", "15.34", with("dockage", "1.3 %"), with("test-weight", "57.2 lb/bu"), with("protein", "12.6 %"),
		with("damage", "3.1 %"), at("5.15 $/bu"), owners(3, 1, 2))
	b.ReportAllocs()
	for b.Loop() {
		if _, err := settle.Settle(f, e); err != nil {
			b.Fatal(err)
		}
	}
}

// The working written out, as a slip prints it.
func BenchmarkWorkingText(b *testing.B) {
	s := mustSettle(b, corn("52300", "18.34", with("damage", "6.1 %"), at("4.15 $/bu")), shipped(b, "corn-main-2026"))
	b.ReportAllocs()
	for b.Loop() {
		if s.Sheet.Text(80) == "" {
			b.Fatal("no text")
		}
	}
}
