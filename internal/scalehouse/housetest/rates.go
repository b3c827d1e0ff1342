package housetest

import (
	"testing"

	"tenthpoint/internal/rates"
)

// Rates are invented: water shrink to 15.0 %, half a percent of handling,
// $0.04 per point per wet bushel, foreign material over 5 % turned away.
func Rates(t testing.TB) *rates.Set {
	t.Helper()
	e, err := rates.Read("house-corn.toml", []byte(HouseCorn))
	Must(t, err)
	set, wrong := rates.NewSet(e)
	if len(wrong) > 0 {
		t.Fatal(wrong)
	}
	return set
}

// HouseCorn is the edition of these rates.
const HouseCorn = `
[edition]
id = "corn-house-2026"
title = "Corn, test rates"
schedule = "house"
commodity = "corn"
status = "example"
from = "2026-08-01"
order = ["shrink", "handling", "drying", "discounts"]

[origin]
issued = "2026-07-15"
by = "Invented for tests"
document = "none: example rates, posted nowhere"

[units]
weight = "lb"
settle = "bu"
currency = "USD"
bushel = "56 lb/bu"
bushel_source = "Minnesota Statutes 239.32"

[rounding]
moisture = "0.1 half-up"
weight = "1 half-up"
quantity = "0.01 half-up"
money = "0.01 half-up"

[shrink]
method = "water"
basis = "net"
trigger = "15.0 %"
to = "15.0 %"
over_dry = "none"

[handling]
method = "wet"
rate = "0.5 %"
always = false

[drying]
method = "per-point"
basis = "net"
trigger = "15.0 %"
to = "15.0 %"
rate = "0.04 $/bu/pt"
step = "continuous"

[[discount]]
label = "Broken corn and foreign material discount"
factor = "bcfm"
form = "per-unit"
of = "money"
basis = "dry"
untested = "none"
base = "3.0 %"
side = "above"
per = "1.0 %"
part = "up"
discount = "0.03 $/bu"
refuse_over = "5.0 %"

[shares]
remainder = "first"
`
