package dryness

import (
	"encoding/csv"
	"os"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tenthpoint/internal/message"
	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/quantity"
)

const redSpring = "Wheat - Canada Western Red Spring"

func judgeDry(t *testing.T, r Rules, moisture, tolerance string, flags ...moisture.Flag) Advice {
	t.Helper()
	var tol quantity.Amount
	if tolerance != "" {
		tol = pt(tolerance)
	}
	a, err := r.Judge(pct(moisture), tol, flags)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// Corn at 17.5 % against 15 % is 2.5 points over, which no posted tolerance spans: "not certain" told
// a grower nothing. Within a point it cannot be told while the meter's tolerance is not entered.
func TestFarFromTheLimitIsCertainWithoutATolerance(t *testing.T) {
	corn := Rules{Crop: "corn", Buy: pct("15")}
	for read, short := range map[string]string{
		"17.5": "not dry", "16.1": "not dry", "16": "not dry as read, not certain", "15": "dry as read, not certain",
		"14": "dry as read, not certain", "13.9": "dry",
	} {
		if v := judgeDry(t, corn, read, "").Verdicts[0]; v.Short().String() != short {
			t.Errorf("%s %%: %s; want %s", read, v.Short(), short)
		}
	}
	// 5 % of 30.1 % is 1.505 points.
	for over, certain := range map[string]bool{"28.6": false, "28.5": true} {
		if v := judgeDry(t, Rules{Crop: "corn", Buy: pct(over)}, "30.1", "").Verdicts[0]; v.Certain != certain {
			t.Errorf("30.1 %% against %s %%: certain %v", over, v.Certain)
		}
	}
}

// A posted charge that ends at 15 % does not dry corn to the 13.5 % it is kept at.
func TestPostedDryingChargeEndsWhereItSays(t *testing.T) {
	for chargedTo, says := range map[string]string{
		"15": "is for drying to 15 %", "13.5": "at the posted drying charge", "13": "at the posted drying charge", "": "post no charge",
	} {
		corn := Rules{Crop: "corn", StoreLong: pct("13.5"), Dries: true}
		if chargedTo != "" {
			corn.ChargedTo = pct(chargedTo)
		}
		options := judgeDry(t, corn, "17.5", "0.3").Options
		if len(options) != 1 || !strings.Contains(options[0].Text.String(), says) {
			t.Errorf("charged to %q: %v; want %q", chargedTo, options, says)
		}
	}
}

// Common practice and the order agree: wheat at 14.2 % is dry.
func TestWheatAt14Point2IsDry(t *testing.T) {
	v := judgeDry(t, Rules{CanadaGrain: redSpring}, "14.2", "0.2").Verdicts[0]
	if !v.Dry || !v.Certain || v.Class != "straight" || v.Short().String() != "dry" || !v.Limit.Equal(pct("14.5")) {
		t.Errorf("%+v", v)
	}
	const want = "14.2 % is straight: Wheat - Canada Western Red Spring is straight up to 14.5 %."
	if v.Reason.String() != want {
		t.Errorf("reason %q, want %q", v.Reason, want)
	}
}

func TestVerdictIsNeverSurerThanTheReading(t *testing.T) {
	wheat := Rules{CanadaGrain: redSpring}
	for _, c := range []struct {
		moisture, tolerance string
		flags               []moisture.Flag
		short, words        string
	}{
		{"14.2", "0.5", nil, "dry as read, not certain", "off by as much as 0.5 pt: the grain may be anything from 13.7 % to 14.7 %, on both sides of the limit"},
		{"14.2", "0.3", nil, "dry", ""}, // up to 14.5 %, which is straight
		{"14.2", "0.4", nil, "dry as read, not certain", "13.8 % to 14.6 %"},
		{"14.6", "0.1", nil, "not dry as read, not certain", "14.5 % to 14.7 %"},
		{"14.7", "0.1", nil, "not dry", "14.7 % is tough"},
		{"14.2", "", nil, "dry as read, not certain", "is not entered"},
		{"18", "0.5", []moisture.Flag{{Code: moisture.Cold, What: message.Words("The sample was at 20 °F, below 40 °F.")}}, "not dry as read, not certain", "in doubt: The sample was at 20 °F"},
		{"18", "0.5", nil, "not dry", "18.0 % is damp"},
	} {
		v := judgeDry(t, wheat, c.moisture, c.tolerance, c.flags...).Verdicts[0]
		if v.Short().String() != c.short || !strings.Contains(v.Reason.String(), c.words) {
			t.Errorf("%s ± %s: %s: %s; want %s, %q", c.moisture, c.tolerance, v.Short(), v.Reason, c.short, c.words)
		}
	}
}

func TestHouseLimits(t *testing.T) {
	corn := Rules{Crop: "corn", Buy: pct("15"), StoreShort: pct("15.5"), StoreLong: pct("14"), AerateWithin: pt("1.5"), ChargedTo: pct("14"), Dries: true, WetPit: "pit 2"}
	for _, c := range []struct {
		moisture, tolerance string
		dry                 string // for buying, storing short, storing long
		options             string
	}{
		{"13.5", "0.3", "yes yes yes", "leave"},
		{"14", "0.3", "yes yes yes", "leave, test again"},
		{"14.9", "0.05", "yes yes no", "leave, aerate, dry, another pit"},
		{"15.2", "0.1", "no yes no", "leave, aerate, dry, another pit"},
		{"15.5", "0.01", "no yes no", "leave, test again, aerate, dry, another pit"},
		{"15.6", "0.05", "no no no", "dry, another pit"},
		{"25", "0.5", "no no no", "dry, another pit"},
	} {
		a := judgeDry(t, corn, c.moisture, c.tolerance)
		var dry, options []string
		for _, v := range a.Verdicts {
			dry = append(dry, map[bool]string{true: "yes", false: "no"}[v.Dry])
		}
		for _, o := range a.Options {
			options = append(options, o.Name)
		}
		if strings.Join(dry, " ") != c.dry || strings.Join(options, ", ") != c.options {
			t.Errorf("%s ± %s: %s; %s; want %s; %s", c.moisture, c.tolerance, strings.Join(dry, " "), strings.Join(options, ", "), c.dry, c.options)
		}
	}
	wet := judgeDry(t, corn, "17.2", "0.3")
	if v := wet.Verdicts[0]; v.Reason.String() != "17.2 % is 2.2 pt above 15 %, not dry enough to buy as dry." || !v.Over.Equal(pt("2.2")) {
		t.Errorf("%s %q", v.Over, v.Reason)
	}
	if o := wet.Options[0]; o.Text.String() != "Dry it here from 17.2 % to 14 %, 3.2 pt, at the posted drying charge." {
		t.Errorf("%q", o.Text)
	}
}

func TestOptionsAreOnlyWhatTheHouseOffers(t *testing.T) {
	bare := judgeDry(t, Rules{Crop: "corn", Buy: pct("15")}, "15.3", "0.1")
	if len(bare.Options) != 0 {
		t.Errorf("a house that offers nothing: %v", bare.Options)
	}
	buyOnly := judgeDry(t, Rules{Crop: "corn", Buy: pct("15"), AerateWithin: pt("1")}, "15.3", "0.1")
	if len(buyOnly.Options) != 0 {
		t.Errorf("air is for grain that is stored: %v", buyOnly.Options)
	}
	none := judgeDry(t, Rules{Crop: "corn"}, "15.3", "0.1")
	if len(none.Verdicts) != 0 || len(none.Options) != 1 || none.Options[0].Name != "ask" {
		t.Errorf("no limits: %+v", none)
	}
	if _, err := (Rules{CanadaGrain: "Rice"}).Judge(pct("14"), pt("0.1"), nil); !errortest.Invalid().Met(err) {
		t.Errorf("a grain without classes: %v", err)
	}
}

// Cell by cell through the order: at each printed limit the class holds, a
// tenth above it the next begins, and only straight grain is dry.
func TestCanadianClassesCellByCell(t *testing.T) {
	file, err := os.Open("../../testdata/published/canada-off-grades-order/moisture.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	names := []string{"straight", "tough", "damp", "moist", "wet"}
	cells := 0
	for _, row := range rows[1:] {
		rules := Rules{CanadaGrain: row[0]}
		for i, cell := range row[1:5] {
			if cell == "" || strings.Trim(cell, "0123456789.") != "" {
				continue // open, or no such class
			}
			cells++
			next := names[i+1]
			if row[0] == "Beans" {
				next = "damp" // the order has no tough beans
			}
			at := judgeDry(t, rules, cell, "0.1").Verdicts[0]
			above, err := rules.Judge(pct(cell).Add(pct("0.1")), pt("0.1"), nil)
			if err != nil {
				t.Fatal(err)
			}
			if at.Class != names[i] || at.Dry != (i == 0) || above.Verdicts[0].Class != next || above.Verdicts[0].Dry {
				t.Errorf("%s at %s: %s, dry %v; a tenth above: %s, dry %v", row[0], cell, at.Class, at.Dry, above.Verdicts[0].Class, above.Verdicts[0].Dry)
			}
		}
	}
	if len(rows) != 61 || cells < 2*60-1 {
		t.Errorf("%d rows and %d cells were walked", len(rows), cells)
	}
}

// Wetter grain is never drier, and a verdict is certain only where the whole
// band is on one side.
func TestDryVerdictsAreMonotone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tenths := func(name string, low, high int64) quantity.Amount {
			return pct("0.1").Mul(quantity.Int(rapid.Int64Range(low, high).Draw(t, name), quantity.Plain))
		}
		r := Rules{CanadaGrain: redSpring, Buy: tenths("buy", 100, 200)}
		a, b := tenths("one", 80, 300), tenths("other", 80, 300)
		tolerance := tenths("tolerance", 1, 20).In(quantity.Point)
		drier, err := r.Judge(quantity.Min(a, b), tolerance, nil)
		if err != nil {
			t.Fatal(err)
		}
		wetter, err := r.Judge(quantity.Max(a, b), tolerance, nil)
		if err != nil {
			t.Fatal(err)
		}
		for i, v := range drier.Verdicts {
			if wetter.Verdicts[i].Dry && !v.Dry {
				t.Fatalf("%s is dry and %s is not", wetter.Band, drier.Band)
			}
			oneSide := !drier.Band.High.More(v.Limit) || drier.Band.Low.More(v.Limit)
			if v.Certain != oneSide {
				t.Fatalf("%s against %s: certain %v", drier.Band, v.Limit, v.Certain)
			}
		}
	})
}

func TestDryRulesCheck(t *testing.T) {
	good := Rules{Crop: "wheat-hrs", CanadaGrain: redSpring, Buy: pct("14.5"), StoreShort: pct("14"), StoreLong: pct("13"), AerateWithin: pt("1")}
	expectErrors(t, "good", good.Check())
	expectErrors(t, "one grain only", Rules{Crop: "corn"}.Check())
	bad := Rules{Crop: "maise", CanadaGrain: "Wheat", Buy: pt("14.5"), StoreShort: pct("13"), StoreLong: pct("14"), AerateWithin: pct("1")}
	expectErrors(t, "bad", bad.Check(), errortest.Invalid("maise"), errortest.Invalid("Wheat"), errortest.Invalid("14.5 pt"),
		errortest.Invalid("14 %", "13 %"), errortest.Invalid("1 %"))
}
