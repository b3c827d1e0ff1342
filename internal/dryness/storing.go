package dryness

import (
	"tenthpoint/internal/keeping"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Storing is a question: does grain keep so many days at a temperature?
type Storing struct {
	Crop string
	// Moisture in percent, temperature in °F or °C, and the days it is to keep.
	Moisture, Temperature, Days quantity.Amount
	// Bushel is the weight of a bushel; without it the cost of drying is left out.
	Bushel quantity.Amount
	// FuelPrice and PowerPrice are the grower's, such as 1.80 $/gal and 0.12 $/kWh;
	// not set, no cost is told.
	FuelPrice, PowerPrice quantity.Amount
	// Posted is what the rates of the house say of this grain.
	Posted Posted
}

// Posted is what an edition takes of grain as it stands; the zero value where none can be asked.
type Posted struct {
	Edition string
	// DriedTo is the moisture that drying is charged down to, and Drying the charge for a unit
	// delivered; not set where the edition charges none.
	DriedTo, Drying quantity.Amount
	// Taken is all charges and discounts for a unit delivered, before what is left of it is paid.
	Taken quantity.Amount
	// Left is what is settled of a hundred pounds.
	Left quantity.Amount
}

// Kept is the answer of one storage table.
type Kept struct {
	Table  keeping.Table
	Keeps  keeping.Days
	Enough bool
}

// Stored is the answer: by each table, the first deciding, with the moistures that
// sources recommend for so long and, where it does not keep, the grower's ways.
type Stored struct {
	By          []Kept
	Recommended []keeping.Recommended
	Ways        []Way
}

// Way is one thing a grower can do with grain that does not keep long enough, to be
// set beside the others.
type Way struct {
	Name message.Text
	// Days until it is done, Cost of a bushel and Left of a hundred pounds; each not
	// set where the figures for it are not known.
	Days, Cost, Left quantity.Amount
	// Then is the condition of the grain afterwards.
	Then message.Text
}

// Enough is the first table's answer.
func (s Stored) Enough() bool { return s.By[0].Enough }

// Answer asks the tables. The error says what is out of their reach.
func (q Storing) Answer() (Stored, error) {
	tables, err := keeping.Tables(q.Crop)
	if err != nil {
		return Stored{}, err
	}
	out := Stored{Recommended: keeping.RecommendedFor(q.Crop, q.Days)}
	for i, table := range tables {
		keeps, err := table.Days(q.Moisture, q.Temperature)
		if i == 0 && err != nil {
			return Stored{}, err
		}
		if err == nil {
			out.By = append(out.By, Kept{table, keeps, !keeps.Shown().Less(q.Days)})
		}
	}
	if !out.Enough() {
		out.Ways = q.ways(tables[0], out.Recommended)
	}
	return out, nil
}

var (
	coolStore = quantity.Int(40, quantity.Fahrenheit)
	bestBu    = quantity.Int(1, keeping.CFMPerBushel)
)

// ways are set side by side: drying here, or at home with heat or air, keeping the grain cool as it
// is, and selling it wet.
func (q Storing) ways(table keeping.Table, limits []keeping.Recommended) []Way {
	var out []Way
	if quantity.Recorded(q.Posted.Drying) {
		out = append(out, Way{Name: message.New("Have it dried here to %s, at the posted charge", q.Posted.DriedTo), Cost: q.Posted.Drying, Left: q.Posted.Left, Then: q.after(table, q.Posted.DriedTo)})
	}
	for _, limit := range limits {
		if limit.Moisture.Less(q.Moisture) && quantity.Recorded(q.Bushel) {
			out = append(out, q.dried(table, limit.Moisture)...)
			break
		}
	}
	if keeps, err := table.Days(q.Moisture, coolStore); err == nil {
		out = append(out, Way{Name: message.New("Keep it cool, at %s", coolStore), Then: message.New("it keeps %s", keeps)})
	}
	return append(out, q.soldWet(), Way{Name: message.New("Bring it back drier"), Then: message.New("it is tested again")})
}

// soldWet is the grain sold as it stands, under the rates of the house where they can be asked.
func (q Storing) soldWet() Way {
	if q.Posted.Edition == "" {
		return Way{Name: message.New("Sell it wet today"), Then: message.New("the rates in force say what is taken: tenth settle")}
	}
	return Way{Name: message.New("Sell it wet today, under %v", q.Posted.Edition), Cost: q.Posted.Taken, Left: q.Posted.Left, Then: message.New("what is left is paid for")}
}

// after is the condition of the grain once it is dried.
func (q Storing) after(table keeping.Table, to quantity.Amount) message.Text {
	if keeps, err := table.Days(to, q.Temperature); err == nil {
		return message.New("at %s it keeps %s", to, keeps)
	}
	return message.New("it is %s", to)
}

// dried are the two ways to dry a hundred bushels, as far as figures are known.
func (q Storing) dried(table keeping.Table, to quantity.Amount) []Way {
	d := keeping.Drying{Weight: quantity.Int(100, quantity.Bushel).Mul(q.Bushel), From: q.Moisture, To: to, Bushel: q.Bushel, FuelPrice: q.FuelPrice, PowerPrice: q.PowerPrice}
	then := q.after(table, to)
	hundred := quantity.Int(100, quantity.Percent)
	left := quantity.To("0.01", quantity.HalfUp).Apply(quantity.Int(100, quantity.Lb).Mul(hundred.Sub(q.Moisture)).Div(hundred.Sub(to)))
	heat := Way{Name: message.New("Dry it with heat to %s", to), Left: left, Then: then}
	if s, err := d.WorkHeated(); err == nil {
		if cost, known := s.Step("cost.each"); known {
			heat.Cost = cost.Value()
		}
	}
	out := []Way{heat}
	if natural, err := (keeping.NaturalAir{Grain: d, Airflow: bestBu, Temperature: q.Temperature, PowerPrice: q.PowerPrice}).Work(); err == nil {
		way := Way{Name: message.New("Natural air in his own bin at %s", bestBu), Days: natural.Days, Left: left, Then: then}
		if cost, known := natural.Sheet.Step("cost.each"); known {
			way.Cost = cost.Value()
		}
		out = append(out, way)
	}
	return out
}
