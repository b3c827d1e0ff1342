package grain

import (
	"strings"
	"sync"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/tomlfile"
	"tenthpoint/schedules/factors"
)

// HalfLitre is the test weight of a grain from the grams that a half-litre cup
// holds: kg/hL = AtZero + PerGram x grams, as the Canadian Grain Commission prints
// it. The zero HalfLitre is that of a grain without a chart.
type HalfLitre struct{ AtZero, PerGram quantity.Amount }

var kgPerHLPerGram = quantity.KgPerHL.Per(quantity.Gram)

// TestWeight is the test weight of so many grams, exact.
func (h HalfLitre) TestWeight(grams quantity.Amount) quantity.Amount {
	return h.AtZero.Add(h.PerGram.Mul(grams))
}

// known reports whether there is a chart.
func (h HalfLitre) known() bool { return h.PerGram.Sign() > 0 }

// CanadianGradeWeight is a test weight in kg/hL as a Canadian grade reads it: whole.
func CanadianGradeWeight(kgPerHL quantity.Amount) quantity.Amount {
	return quantity.To("1", quantity.HalfUp).Apply(kgPerHL)
}

// halfLitres are the charts by the ids of their grains; a mistake in the list is
// one of the program.
var halfLitres = sync.OnceValue(func() map[string]HalfLitre {
	out := map[string]HalfLitre{}
	readShipped("half-litre.toml", factors.HalfLitre, func(root *tomlfile.Table) {
		root.Text("citation")
		for _, row := range root.Tables("equation") {
			h := HalfLitre{row.Amount("at_zero", quantity.KgPerHL), row.Amount("per_gram", kgPerHLPerGram)}
			for _, id := range row.Texts("grains") {
				out[id] = h
			}
		}
	})
	return out
})

// halfLitreUnits are the ways testers write it.
var halfLitreUnits = []string{"g/0.5 L", "g/0.5L", "g/0,5 L", "g/½ L", "g/½L", "g"}

// parseHalfLitre reads "385 g/0.5 L"; asked is false for any other text.
func (f Factor) parseHalfLitre(text string) (a quantity.Amount, asked bool, err error) {
	text = strings.TrimSpace(text)
	if f.ID != TestWeight || strings.HasSuffix(text, quantity.KgPerHL.String()) {
		return a, false, nil
	}
	for _, unit := range halfLitreUnits {
		if figure, ok := strings.CutSuffix(text, unit); ok {
			a, err = f.ofHalfLitre(strings.TrimSpace(figure))
			return a, true, err
		}
	}
	return a, false, nil
}

func (f Factor) ofHalfLitre(figure string) (quantity.Amount, error) {
	if !f.HalfLitre.known() {
		return quantity.Amount{}, message.Invalid.Errorf("there is no half-litre chart for this grain; type the test weight in kg/hL")
	}
	cup := quantity.Field{Name: f.Name, Unit: quantity.Gram, Min: quantity.Int(50, quantity.Gram), Max: quantity.Int(500, quantity.Gram)}
	grams, err := cup.Parse(figure)
	if err != nil {
		return quantity.Amount{}, err
	}
	return f.HalfLitre.TestWeight(grams), nil
}

// averyPerKgHL takes pounds in an Avery bushel of 36.37 L to kg/hL, as the charts
// of the Canadian Grain Commission have it. The pound in a bushel of the United
// States is in a Winchester bushel, of 35.24 L.
var averyPerKgHL = quantity.Of("1.247", quantity.Plain)

// parseAvery reads "48.1 lb/bu Avery" as kg/hL; asked is false for any other text.
func (f Factor) parseAvery(text string) (a quantity.Amount, asked bool, err error) {
	figure, ok := cutWord(text, "Avery")
	if f.ID != TestWeight || !ok {
		return a, false, nil
	}
	inBushels := f.In(quantity.LbPerBushel)
	a, err = inBushels.Field().Parse(figure)
	if err != nil {
		return a, true, err
	}
	return a.In(quantity.KgPerHL).Mul(averyPerKgHL), true, nil
}

// cutWord cuts a word off the end of a text, ignoring case.
func cutWord(text, word string) (string, bool) {
	text = strings.TrimSpace(text)
	at := len(text) - len(word)
	if at < 0 || !strings.EqualFold(text[at:], word) {
		return text, false
	}
	return strings.TrimSpace(text[:at]), true
}
