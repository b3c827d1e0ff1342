package main

import (
	"strings"

	"tenthpoint/internal/entry"
	"tenthpoint/internal/load"
)

// weightFlags are weights read at the scale.
type weightFlags struct {
	Gross      []string `sep:"none" help:"Weight of the loaded truck; for two drafts truck=WEIGHT and trailer=WEIGHT." placeholder:"WEIGHT" group:"weights"`
	Tare       []string `sep:"none" help:"Weight of the empty truck, likewise." placeholder:"WEIGHT" group:"weights"`
	StoredTare bool     `help:"Use the truck's stored tare." group:"weights"`
	Scale      string   `help:"Scale they were weighed on, where there are several." placeholder:"SCALE" group:"weights"`
	Manual     string   `help:"Why the weights are typed by hand; the ticket marks them MANUAL WT." default:"read from the indicator" placeholder:"WHY" group:"weights"`
	DriverOn   string   `help:"Whether the driver was on the truck." enum:"on,off,unsaid" default:"unsaid" group:"weights"`
}

// weighed reports whether any weight was given.
func (f weightFlags) weighed() bool { return len(f.Gross)+len(f.Tare) > 0 || f.StoredTare }

func (f weightFlags) texts() texts {
	t := texts{}
	t.put("scale", f.Scale)
	for which, typed := range map[load.Which][]string{load.Gross: f.Gross, load.Tare: f.Tare} {
		for _, text := range typed {
			draft, weight, several := strings.Cut(text, "=")
			if !several {
				draft, weight = "", text
			}
			t[entry.WeightID(which, strings.TrimSpace(draft))] = weight
		}
	}
	if f.StoredTare {
		t[string(load.Tare)] = entry.StoredTareText
	}
	return t
}

func (f weightFlags) driverOn() string {
	if f.DriverOn == "unsaid" {
		return ""
	}
	return f.DriverOn
}
