package elevator

import (
	"encoding/json"
	"strings"
	"testing"

	"tenthpoint/internal/message"
	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/quantity"
)

func scale() Scale {
	return Scale{ID: "1", Division: quantity.Int(20, quantity.Lb), Capacity: quantity.Int(120000, quantity.Lb)}
}

func TestCheckWeight(t *testing.T) {
	for _, c := range []struct {
		weight, unit string
		want         errortest.Want
	}{
		{"52300", "lb", errortest.Want{}},
		{"126000", "lb", errortest.Want{}}, // 105 % of 120,000
		{"126020", "lb", errortest.Invalid("126,000 lb")},
		{"52310", "lb", errortest.Invalid("52,300 lb", "52,320 lb")},
		{"0", "lb", errortest.Invalid()},
		{"-20", "lb", errortest.Invalid()},
		{"23700", "kg", errortest.Invalid("lb")},
	} {
		unit, err := quantity.ParseUnit(c.unit)
		if err != nil {
			t.Fatal(err)
		}
		err = scale().CheckWeight(quantity.Of(c.weight, unit))
		if !c.want.Met(err) {
			t.Errorf("%s %s: got %v, want %q", c.weight, c.unit, err, c.want)
		}
	}
}

// SI/98-81 s. 62, read: grain at a primary, transfer or terminal elevator 200
// divisions, other bulk 100. The 50 of Handbook 44 is from memory.
func TestSmallestNetByRuleSet(t *testing.T) {
	ten := Scale{ID: "1", Division: quantity.Int(10, quantity.Kg), Capacity: quantity.Int(60_000, quantity.Kg)}
	for name, c := range map[string]struct {
		house Profile
		want  int64
	}{
		"licensed under the Canada Grain Act": {Profile{Rules: "canada"}, 2000},
		"not licensed under the Act":          {Profile{Rules: "canada", Unlicensed: true}, 1000},
		"United States":                       {Profile{Rules: "us"}, 500},
	} {
		if got := c.house.SmallestNet(ten); !got.Equal(quantity.Int(c.want, quantity.Kg)) {
			t.Errorf("%s: the smallest net is %s, want %d kg", name, got, c.want)
		}
	}
}

func TestLightNet(t *testing.T) {
	if w := scale().LightNet(quantity.Int(980, quantity.Lb)); !strings.Contains(w.String(), "under 50 divisions") {
		t.Errorf("980 lb: %q", w)
	}
	if w := scale().LightNet(quantity.Int(1000, quantity.Lb)); !w.IsZero() {
		t.Errorf("1,000 lb is 50 divisions: %q", w)
	}
}

func TestProfileNamesAllItLacks(t *testing.T) {
	got := message.Texts("\n", Profile{}.Check()).String()
	for _, want := range []string{"business name", "street address", "town", "phone number", "No scale", "No commodity"} {
		if !strings.Contains(got, want) {
			t.Errorf("an empty profile does not say that it lacks %q", want)
		}
	}
	whole := Profile{Business: "A", Street: "B", Town: "C", Phone: "D", Scales: []Scale{scale()}, Grains: []GrainRule{{"corn", "main"}}}
	if wrong := whole.Check(); wrong != nil {
		t.Errorf("a whole profile: %v", wrong)
	}
	whole.Scales = append(whole.Scales, scale())
	if wrong := whole.Check(); len(wrong) != 1 || !strings.Contains(wrong[0].String(), "Two scales") {
		t.Errorf("two scales of one name: %v", wrong)
	}
	whole.Scales = whole.Scales[:1]
	whole.Scales[0].Division = quantity.Zero(quantity.Lb)
	if wrong := whole.Check(); len(wrong) != 1 {
		t.Errorf("a scale without a division: %v", wrong)
	}
}

func parts(n int64) quantity.Amount { return quantity.Int(n, quantity.Plain) }

func TestStandingThings(t *testing.T) {
	negative := quantity.Int(-5, quantity.Lb)
	tare := quantity.Int(24000, quantity.Lb)
	for name, c := range map[string]struct {
		err  error
		want errortest.Want
	}{
		"grower":              {Grower{ID: "1", Name: "Ada"}.Check(), errortest.Want{}},
		"grower without name": {Grower{ID: "1"}.Check(), errortest.Invalid()},
		"thirds":              {Grower{ID: "1", Name: "A", Shares: []Share{{"1", parts(1), parts(3), nil}, {"2", parts(2), parts(3), nil}}}.Check(), errortest.Want{}},
		"shares over":         {Grower{ID: "1", Name: "A", Shares: []Share{{"1", parts(60), parts(100), nil}, {"2", parts(50), parts(100), nil}}}.Check(), errortest.Invalid("110")},
		"share of nothing":    {Grower{ID: "1", Name: "A", Shares: []Share{{"1", parts(0), parts(100), nil}}}.Check(), errortest.Invalid()},
		"truck":               {Truck{ID: "7", Tare: &tare, Taken: quantity.MustDate("2026-09-01")}.Check(), errortest.Want{}},
		"truck without name":  {Truck{}.Check(), errortest.Invalid()},
		"negative tare":       {Truck{ID: "7", Tare: &negative}.Check(), errortest.Invalid()},
		"tare without day":    {Truck{ID: "7", Tare: &tare}.Check(), errortest.Invalid()},
		"person":              {Person{Name: "Mae Orton", Role: Manager}.Check(), errortest.Want{}},
		"nobody":              {Person{Role: Manager}.Check(), errortest.Invalid()},
		"odd role":            {Person{Name: "Mae", Role: "king"}.Check(), errortest.Invalid()},
		"bin":                 {Bin{}.Check(), errortest.Invalid()},
		"contract":            {ContractTerms{Number: "C1", Grower: "1", Commodity: "corn", Quantity: quantity.Int(5000, quantity.Bushel), Price: quantity.Of("4.15", quantity.DollarsPerBu)}.Check(), errortest.Want{}},
		"contract per cwt":    {ContractTerms{Number: "C1", Grower: "1", Commodity: "corn", Quantity: quantity.Int(5000, quantity.Bushel), Price: quantity.Of("4.15", quantity.DollarsPerCwt)}.Check(), errortest.Invalid("bu")},
		"contract of pounds":  {ContractTerms{Number: "C1", Grower: "1", Commodity: "corn", Quantity: quantity.Int(5000, quantity.Lb)}.Check(), errortest.Invalid()},
		"contract of nobody":  {ContractTerms{}.Check(), errortest.Invalid()},
	} {
		if !c.want.Met(c.err) {
			t.Errorf("%s: got %v, want %q", name, c.err, c.want)
		}
	}
}

func TestKinds(t *testing.T) {
	for _, f := range []Fact{Profile{}, Grower{}, Truck{}, Person{}, Bin{}, ContractTerms{}, PostedPrice{}} {
		if !IsFact(f.Kind()) {
			t.Errorf("%s is not known", f.Kind())
		}
	}
	if IsFact("house.moved") {
		t.Error("an unknown kind is known")
	}
}

// A contract whose price is open is read back from the journal as it was written.
func TestAnOpenPriceIsReadBack(t *testing.T) {
	basis := quantity.Of("-0.30", quantity.DollarsPerBu)
	c := ContractTerms{Number: "B", Grower: "1", Commodity: "corn", Quantity: quantity.Int(5000, quantity.Bushel), Until: quantity.MustDate("2026-12-31"), Form: Basis, Basis: &basis}
	body, err := json.Marshal(c)
	if err != nil {
		t.Fatal(err)
	}
	var back ContractTerms
	if err := json.Unmarshal(body, &back); err != nil || back.Check() != nil || back.HasPrice() || !back.Basis.Equal(basis) {
		t.Errorf("%s: %v, %v", body, err, back.Check())
	}
}
