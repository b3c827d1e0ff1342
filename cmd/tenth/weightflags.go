package main

import (
	"strings"

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

// weighings are the weights typed.
func (f weightFlags) weighings(p *post, truck load.Truck) ([]load.Weighing, error) {
	var out []load.Weighing
	for _, side := range []struct {
		which load.Which
		typed []string
	}{{load.Gross, f.Gross}, {load.Tare, f.Tare}} {
		for _, text := range side.typed {
			w, err := f.weighing(p, side.which, text)
			if err != nil {
				return nil, err
			}
			out = append(out, w)
		}
	}
	if !f.StoredTare {
		return out, nil
	}
	stored, err := p.storedTare(truck)
	return append(out, stored), err
}

func (f weightFlags) weighing(p *post, which load.Which, text string) (load.Weighing, error) {
	draft, weight, several := strings.Cut(text, "=")
	if !several {
		draft, weight = "", text
	}
	name := strings.ToUpper(string(which[:1])) + string(which[1:])
	a, err := weightIn(name, weight, p.Profile().WeightUnit())
	w := load.Weighing{Which: which, Draft: draft, Weight: a, Source: load.ByHand, Scale: f.Scale, Reason: f.Manual, DriverOn: f.DriverOn}
	if f.DriverOn == "unsaid" {
		w.DriverOn = ""
	}
	return w, err
}

// storedTare is a truck's tare from an earlier weighing.
func (p *post) storedTare(truck load.Truck) (load.Weighing, error) {
	t, known, err := p.truck(truck.ID)
	if err != nil {
		return load.Weighing{}, err
	}
	if !known || t.Tare == nil {
		return load.Weighing{}, refusal("Weigh it empty and give --tare", "truck %q has no stored tare", truck.ID)
	}
	return load.Weighing{Which: load.Tare, Weight: *t.Tare, Source: load.StoredTare, Taken: t.Taken}, nil
}
