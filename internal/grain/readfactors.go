package grain

import (
	"slices"
	"sync"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/tomlfile"
	"tenthpoint/schedules/factors"
)

// DeclaredFactor is a factor defined by data, together with its recording rule.
type DeclaredFactor struct {
	Factor
	Grains []string // ids of the grains that are tested for it
}

// factorUnits are the units a declared factor may be measured in.
var factorUnits = map[string]quantity.Unit{
	"%": quantity.Percent, "ppm": quantity.PPM, "ppb": quantity.PPB, "s": quantity.Second, "ct": quantity.Count,
}

// ReadFactor reads a factor that a file declares.
func ReadFactor(t *tomlfile.Table) Factor {
	f := Factor{ID: FactorID(t.Text("id")), Name: t.Text("name"), Short: t.OptionalText("short"), Source: t.Text("citation")}
	f.Unit = factorUnits[t.Choice("unit", "%", "ppm", "ppb", "s", "ct")]
	f.Record = t.Rounding("record")
	f.Min, f.Max = t.Amount("least", f.Unit), t.Amount("most", f.Unit)
	if f.Min.More(f.Max) {
		t.AddProblem("least", message.New("the least, %s, is above the most, %s", f.Min.Written(), f.Max.Written()), message.New("Swap the two."))
	}
	return f
}

// trade is the built-in list.
var trade = sync.OnceValue(func() []DeclaredFactor {
	var out []DeclaredFactor
	readShipped("trade.toml", factors.Trade, func(root *tomlfile.Table) {
		for _, row := range root.Tables("factor") {
			out = append(out, DeclaredFactor{ReadFactor(row), row.Texts("grains")})
		}
	})
	return out
})

// readShipped reads data inside the program; a mistake in it is one of the program.
func readShipped(name string, text []byte, body func(root *tomlfile.Table)) {
	if err := tomlfile.Parse(name, text).Read(body); err != nil {
		panic("grain: the data inside the program: " + err.Error())
	}
}

// withTradeFactors adds to each commodity the factors the trade tests it for, after its own, and
// the half-litre chart to its test weight.
func withTradeFactors(all []Commodity) []Commodity {
	for i := range all {
		for n := range all[i].Factors {
			if all[i].Factors[n].ID == TestWeight {
				all[i].Factors[n].HalfLitre = halfLitres()[all[i].ID]
			}
		}
		for _, d := range trade() {
			if slices.Contains(d.Grains, all[i].ID) {
				all[i] = all[i].With(d.Factor)
			}
		}
	}
	return all
}
