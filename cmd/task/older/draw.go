package older

import (
	"crypto/sha256"
	"fmt"
	"math/rand/v2"
	"strings"
	"time"
)

// drawing is the chance of one file or script. Its key is hashed, for nearby
// seeds of a plain generator begin alike.
func drawing(seed uint64, what string, i int) *rand.Rand {
	return rand.New(rand.NewChaCha8(sha256.Sum256(fmt.Appendf(nil, "%d %s %d", seed, what, i))))
}

// dayIn is a day an edition may be in force on.
func dayIn(r *rand.Rand, e offer) string {
	from, err := time.Parse(time.DateOnly, e.From)
	if err != nil {
		return "2026-10-01"
	}
	return from.AddDate(0, 0, r.IntN(420)).Format(time.DateOnly)
}

// weights are those of a truck, now and then the wrong way round.
func weights(r *rand.Rand, metric bool) (gross, tare string) {
	unit, division := "", 20
	if metric {
		unit, division = " kg", 10
	}
	empty := (500 + r.IntN(1200)) * division
	full := empty + (1+r.IntN(3300))*division
	if r.IntN(150) == 0 {
		empty, full = full, empty
	}
	return fmt.Sprintf("%d%s", full, unit), fmt.Sprintf("%d%s", empty, unit)
}

// moisture is mostly about where rates begin to take something.
func moisture(r *rand.Rand) string {
	tenths := 95 + r.IntN(120)
	switch r.IntN(10) {
	case 0:
		tenths = 40 + r.IntN(500)
	case 1:
		return fmt.Sprintf("%d.%02d", 10+r.IntN(15), r.IntN(100))
	}
	return fmt.Sprintf("%d.%d", tenths/10, tenths%10)
}

// price is per tonne, hundredweight or bushel, or none.
func price(r *rand.Rand, e offer) string {
	switch {
	case r.IntN(3) == 0:
		return ""
	case e.metric || e.Schedule == "prairie":
		return fmt.Sprintf("%d.%02d", 120+r.IntN(600), r.IntN(100))
	case r.IntN(4) == 0:
		return fmt.Sprintf("%d.%04d", 2+r.IntN(13), r.IntN(10000))
	}
	return fmt.Sprintf("%d.%02d", 2+r.IntN(13), r.IntN(100))
}

// noticed are results that are present or not.
const noticed = " musty smut-odor off-odor infested heating "

// result returns a random result for a factor, in the range where rates have their steps, at times
// far beyond it.
func result(r *rand.Rand, factor string, metric bool) string {
	least, most := 0, 800 // hundredths
	switch {
	case strings.Contains(noticed, " "+factor+" "):
		return []string{"yes", "no", "no"}[r.IntN(3)]
	case factor == "test-weight" && metric:
		least, most = 4800, 8400
	case factor == "test-weight":
		least, most = 2800, 6400
	case factor == "protein":
		least, most = 800, 1700
	case factor == "plump":
		least, most = 4000, 10000
	case factor == "splits" || factor == "thin" || factor == "damage":
		most = 3000
	case factor == "heat-damage" || factor == "ergot":
		most = 150
	}
	hundredths := least + r.IntN(most-least+1)
	if r.IntN(2) == 0 {
		hundredths = hundredths / 10 * 10
	}
	return fmt.Sprintf("%d.%02d", hundredths/100, hundredths%100)
}
