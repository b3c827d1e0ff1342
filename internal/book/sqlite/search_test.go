package sqlite

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"testing"

	"tenthpoint/internal/book"
	"tenthpoint/internal/quantity"
)

// searchedBook has the loads that the search tests look among: tickets 1 to n
// in turn of three growers, two commodities, four trucks and ten days, every
// seventh void, and one load turned away.
func searchedBook(t testing.TB, n int) *Book {
	t.Helper()
	b := newBook(t)
	growers := [][2]string{{"101", "Abner Quist"}, {"102", "Beatrix 50% Holloway"}, {"103", "Cobb_Hollow Farm"}}
	write(t, b, func(tx *Tx) error {
		for i := 1; i <= n; i++ {
			g := growers[i%3]
			r := book.LoadRow{
				ID: fmt.Sprintf("L%d", i), Phase: "issued", Commodity: []string{"corn", "wheat-hrw"}[i%2],
				Grower: g[0], GrowerName: g[1], Truck: strconv.Itoa(70 + i%4),
				Ticket: int64(i), IssuedDay: fmt.Sprintf("2025-10-%02d", 1+i*9/n),
				Figures: map[string]quantity.Amount{"net": lb(1000), "settled": lb(1000)},
			}
			if i%7 == 0 {
				r.Phase, r.EndedAt = "void", "2025-10-20T10:00:00Z"
			}
			if i%5 == 0 {
				r.Owners = []string{g[0], "901"}
			}
			if err := tx.PutLoad(r); err != nil {
				return err
			}
		}
		return tx.PutLoad(book.LoadRow{
			ID: "L9999999", Phase: "refused", Commodity: "corn", Grower: "101", GrowerName: "Abner Quist", Truck: "70",
			EndedAt: "2025-10-05T10:00:00Z", EndedDay: "2025-10-05",
		})
	})
	return b
}

func terms(words ...string) []book.Term {
	out := make([]book.Term, len(words))
	for i, w := range words {
		out[i].Text = w
	}
	return out
}

func TestSearch(t *testing.T) {
	b := searchedBook(t, 40)
	name := func(r book.LoadRow) string { return r.GrowerName }
	for _, c := range []struct {
		title  string
		search book.Search
		fits   func(book.LoadRow) bool
	}{
		{"everything", book.Search{}, func(book.LoadRow) bool { return true }},
		{"part of a name, in any letters", book.Search{Terms: terms("HOLLO")}, func(r book.LoadRow) bool { return strings.Contains(name(r), "Hollo") }},
		{"two words", book.Search{Terms: terms("hollow", "73")}, func(r book.LoadRow) bool { return strings.Contains(name(r), "Hollow") && r.Truck == "73" }},
		{"a percent sign", book.Search{Terms: terms("50%")}, func(r book.LoadRow) bool { return strings.Contains(name(r), "50%") }},
		{"an underscore", book.Search{Terms: terms("b_h")}, func(r book.LoadRow) bool { return strings.Contains(name(r), "b_H") }},
		{"the beginning of a number", book.Search{Terms: terms("3")}, func(r book.LoadRow) bool {
			return strings.HasPrefix(strconv.FormatInt(r.Ticket, 10), "3") || strings.Contains(r.Truck, "3")
		}},
		{"a grower's code, whole", book.Search{Terms: terms("101")}, func(r book.LoadRow) bool { return r.Grower == "101" }},
		{"a commodity", book.Search{Terms: []book.Term{{Text: "wheat", Commodities: []string{"wheat-hrw"}}}}, func(r book.LoadRow) bool { return r.Commodity == "wheat-hrw" }},
		{"days", book.Search{FromDay: "2025-10-03", ToDay: "2025-10-05"}, func(r book.LoadRow) bool { return r.IssuedDay >= "2025-10-03" && r.IssuedDay <= "2025-10-05" }},
		{"a ticket", book.Search{Ticket: 17}, func(r book.LoadRow) bool { return r.Ticket == 17 }},
		{"a truck", book.Search{Truck: "71"}, func(r book.LoadRow) bool { return r.Truck == "71" }},
		{"one who shares", book.Search{Grower: "901"}, func(r book.LoadRow) bool { return r.Ticket%5 == 0 }},
		{"void", book.Search{Phases: []string{"void", "corrected"}}, func(r book.LoadRow) bool { return r.Phase == "void" }},
		{"the next page", book.Search{Before: 11}, func(r book.LoadRow) bool { return r.Ticket < 11 }},
	} {
		t.Run(c.title, func(t *testing.T) {
			var want []int64
			for i := int64(40); i >= 1; i-- {
				rows, err := b.Loads(ctx, book.LoadFilter{Ticket: i})
				if err != nil || len(rows) != 1 {
					t.Fatal(rows, err)
				}
				if c.fits(rows[0]) {
					want = append(want, i)
				}
			}
			if len(want) == 0 {
				t.Fatal("nothing is looked for")
			}
			c.search.Limit = 100
			if got := numbersOf(t, b, c.search); !slices.Equal(got, want) {
				t.Errorf("found %d, want %d", got, want)
			}
			if n, err := b.CountFound(ctx, c.search); err != nil || c.search.Before == 0 && n != int64(len(want)) {
				t.Errorf("counted %d, %v; want %d", n, err, len(want))
			}
		})
	}
}

func numbersOf(t *testing.T, b *Book, s book.Search) []int64 {
	t.Helper()
	rows, err := b.Search(ctx, s)
	if err != nil {
		t.Fatal(err)
	}
	var out []int64
	for _, r := range rows {
		out = append(out, r.Ticket)
	}
	return out
}

// Pages, each beginning where the one before ended, make the whole list.
func TestSearchByPages(t *testing.T) {
	b := searchedBook(t, 40)
	s := book.Search{Terms: terms("hollow"), Limit: 100}
	whole := numbersOf(t, b, s)
	var pages []int64
	for s.Limit = 7; ; {
		page := numbersOf(t, b, s)
		pages = append(pages, page...)
		if len(page) < 7 {
			break
		}
		s.Before = page[len(page)-1]
	}
	if !slices.Equal(pages, whole) {
		t.Errorf("the pages give %d, the whole list %d", pages, whole)
	}
}

func TestSearchRefused(t *testing.T) {
	b := searchedBook(t, 10)
	for day, want := range map[string]int{"2025-10-05": 1, "2025-10-06": 0} {
		rows, err := b.Search(ctx, book.Search{Refused: true, FromDay: day, ToDay: day, Terms: terms("abner"), Limit: 5})
		if err != nil || len(rows) != want {
			t.Errorf("on %s: %d loads, %v; want %d", day, len(rows), err, want)
		}
	}
}

// BenchmarkSearch is the newest page of a book of 100,000 tickets, for words
// that fit nothing, little, and much, each with the count over all pages.
func BenchmarkSearch(b *testing.B) {
	loads := 100_000
	if testing.Short() {
		loads = 10_000
	}
	kept := searchedBook(b, loads)
	for _, word := range []string{"zebra", "9999", "hollow"} {
		b.Run(word, func(b *testing.B) {
			for b.Loop() {
				s := book.Search{Terms: terms(word), Limit: 100}
				if _, err := kept.Search(ctx, s); err != nil {
					b.Fatal(err)
				}
				if _, err := kept.CountFound(ctx, s); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
