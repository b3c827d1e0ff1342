package settle_test

import "testing"

func dryingTable(rest string) string {
	return "[drying]\nbasis = \"net\"\ntrigger = \"15.0 %\"\nto = \"15.0 %\"\n" + rest
}

// Iowa State: drying is charged on wet bushels and every part of a point; Penn
// State and Michigan State count half points; others whole ones.
func TestDryingByThePoint(t *testing.T) {
	for _, c := range []struct{ step, moisture, charge string }{
		{"continuous", "15.0", "$0.00"},
		{"continuous", "15.1", "$4.50"}, // 1,000 bu x 0.1 x 0.045
		{"continuous", "20.5", "$247.50"},
		{"0.5 up", "15.1", "$22.50"},
		{"0.5 up", "15.5", "$22.50"},
		{"0.5 up", "15.6", "$45.00"},
		{"1 down", "15.9", "$0.00"},
		{"1 up", "16.0", "$45.00"},
		{"1 up", "16.1", "$90.00"},
		{"1 half-up", "15.5", "$45.00"},
	} {
		e := scene(t, dryingTable("method = \"per-point\"\nrate = \"0.045 $/bu/pt\"\nstep = \""+c.step+"\""))
		shows(t, mustSettle(t, corn("56000", c.moisture), e), map[string]string{"drying": c.charge})
	}
}

func TestDryingBasesAndUnits(t *testing.T) {
	for _, c := range []struct{ basis, rate, want string }{
		{"net", "0.045 $/bu/pt", "$225.00"},
		{"dry", "0.045 $/bu/pt", "$211.77"}, // 52,706 lb is 941.18 bu
		{"left", "0.045 $/bu/pt", "$211.77"},
		{"net", "0.08 $/cwt/pt", "$224.00"}, // 560 cwt
		{"net", "1.80 $/t/pt", "$228.60"},   // 25.40 t
	} {
		table := "[drying]\nmethod = \"per-point\"\nbasis = \"" + c.basis + "\"\ntrigger = \"15.0 %\"\nto = \"15.0 %\"\nstep = \"continuous\"\nrate = \"" + c.rate + "\""
		shows(t, mustSettle(t, corn("56000", "20.0"), scene(t, table)), map[string]string{"drying": c.want})
	}
}

const bandRows = `
[[drying.band]]
upto = "18.0 %"
rate = "0.04 $/bu/pt"

[[drying.band]]
over = "18.0 %"
under = "20.0 %"
rate = "0.05 $/bu/pt"

[[drying.band]]
from = "20.0 %"
upto = "24.0 %"
rate = "0.07 $/bu/pt"`

func TestDryingThroughBands(t *testing.T) {
	each := scene(t, dryingTable("method = \"bands-each\"\nstep = \"1 up\"\n"+bandRows))
	for moisture, want := range map[string]string{
		"16.0": "$40.00", "18.0": "$120.00",
		"18.1": "$170.00", // 3 x 0.04 + 1 x 0.05
		"20.0": "$220.00", // 3 x 0.04 + 2 x 0.05
		"20.1": "$290.00",
		"24.0": "$500.00", // 0.12 + 0.10 + 4 x 0.07
	} {
		shows(t, mustSettle(t, corn("56000", moisture), each), map[string]string{"drying": want})
	}
	s := mustSettle(t, corn("56000", "20.1"), each)
	shows(t, s, map[string]string{
		"drying.top": "21.0 %", "drying.points.1": "3.0 pt", "drying.points.2": "2.0 pt", "drying.points.3": "1.0 pt",
	})
	refused(t, corn("56000", "24.1"), each, "Moisture 24.1 % is in no row")
}

// A step upwards may carry the points past the last row; the last row takes
// them.
func TestDryingStepPastTheLastBand(t *testing.T) {
	e := scene(t, `[drying]
method = "bands-each"
basis = "net"
trigger = "15.0 %"
to = "15.0 %"
step = "1 up"

[[drying.band]]
upto = "18.0 %"
rate = "0.04 $/bu/pt"

[[drying.band]]
over = "18.0 %"
upto = "19.5 %"
rate = "0.05 $/bu/pt"`)
	// 19.4 % is 4.4 points, counted as 5: 3 x 0.04 + 2 x 0.05
	s := mustSettle(t, corn("56000", "19.4"), e)
	shows(t, s, map[string]string{"drying.points": "5 pt", "drying.points.2": "2.0 pt", "drying": "$220.00"})
}

// Points that are rounded up go on at the rate of the next band: the moisture lies below it.
func TestDryingPointsRunOnIntoTheNextBand(t *testing.T) {
	e := scene(t, `[drying]
method = "bands-each"
basis = "net"
trigger = "15.0 %"
to = "15.0 %"
step = "1 up"

[[drying.band]]
under = "17.5 %"
rate = "0.04 $/bu/pt"

[[drying.band]]
from = "17.5 %"
rate = "0.05 $/bu/pt"`)
	// 17.4 % is 2.4 points, counted as 3, up to 18.0 %: 2.5 x 0.04 + 0.5 x 0.05
	s := mustSettle(t, corn("56000", "17.4"), e)
	shows(t, s, map[string]string{"drying.points": "3 pt", "drying.points.2": "0.5 pt", "drying": "$125.00"})
}

func TestDryingAllPointsAtOneBand(t *testing.T) {
	whole := scene(t, dryingTable("method = \"bands-whole\"\nstep = \"continuous\"\n"+bandRows))
	for moisture, want := range map[string]string{
		"18.0": "$120.00", "18.1": "$155.00", "19.9": "$245.00", "20.0": "$350.00", "24.0": "$630.00",
	} {
		shows(t, mustSettle(t, corn("56000", moisture), whole), map[string]string{"drying": want})
	}
	refused(t, corn("56000", "24.1"), whole, "Moisture 24.1 % is in no row")
}

// A table of flat charges by moisture, free at the start.
func TestDryingFlatTable(t *testing.T) {
	e := scene(t, dryingTable(`method = "bands-whole"
step = "continuous"
minimum = "20.00 $"

[[drying.band]]
upto = "15.5 %"
rate = "0 $/bu"

[[drying.band]]
over = "15.5 %"
upto = "17.0 %"
rate = "0.06 $/bu"

[[drying.band]]
over = "17.0 %"
rate = "0.11 $/bu"`))
	for moisture, want := range map[string]string{
		"15.0": "$0.00", "15.5": "$0.00", "15.6": "$60.00", "17.0": "$60.00", "17.1": "$110.00", "40.0": "$110.00",
	} {
		shows(t, mustSettle(t, corn("56000", moisture), e), map[string]string{"drying": want})
	}
	// The least charge is for a load that is charged, not for a free one.
	shows(t, mustSettle(t, corn("5600", "15.6"), e), map[string]string{"drying": "$20.00"})
	shows(t, mustSettle(t, corn("5600", "15.5"), e), map[string]string{"drying": "$0.00"})
}

func TestDryingMinimum(t *testing.T) {
	e := scene(t, dryingTable("method = \"per-point\"\nrate = \"0.045 $/bu/pt\"\nstep = \"1 down\"\nminimum = \"50.00 $\""))
	for moisture, want := range map[string]string{
		"15.0": "$0.00", "15.9": "$0.00", "16.0": "$50.00", "16.9": "$50.00", "17.0": "$90.00",
	} {
		shows(t, mustSettle(t, corn("56000", moisture), e), map[string]string{"drying": want})
	}
}
