package scalelink

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/quantity"
)

func mustFormat(t testing.TB, p Profile) *Format {
	t.Helper()
	f, err := NewFormat(p)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// packed is a profile that packs its answers into the bits of one byte.
func packed() Profile {
	return Profile{Name: "packed", Start: "\x02", End: "\r", Length: 7, Fields: []Field{
		{Name: "flags", First: 1, Last: 1, Bits: []Bit{
			{0, "net", "gross"}, {1, "minus", "plus"}, {2, "over", "normal"}, {3, "motion", "stable"}, {4, "kg", "lb"},
		}},
		{Name: "weight", First: 2, Last: 7},
	}}
}

func lb(figure string) quantity.Amount { return quantity.Of(figure, quantity.Lb) }
func kg(figure string) quantity.Amount { return quantity.Of(figure, quantity.Kg) }

func TestParse(t *testing.T) {
	columns, pattern, bits := ExampleColumns(), patternProfile(), packed()
	tests := []struct {
		name    string
		profile Profile
		body    string
		weight  quantity.Amount
		state   State
		mode    Mode
	}{
		{"columns, at rest", columns, "+   52300lb G S", lb("52300"), Stable, Gross},
		{"columns, moving, net, kg", columns, "+   23720kg N M", kg("23720"), Motion, Net},
		{"columns, below zero", columns, "-      20lb G S", lb("-20"), Stable, Gross},
		{"columns, leading zeros", columns, "+00052300lb G S", lb("52300"), Stable, Gross},
		{"columns, decimals", columns, "+ 23720.5kg G S", kg("23720.5"), Stable, Gross},
		{"columns, sign twice is still minus", columns, "-     -20lb G S", lb("-20"), Stable, Gross},
		{"columns, overload has no weight", columns, "+--------lb G O", lb("0"), Over, Gross},
		{"columns, digits of an overload mean nothing", columns, "+   52300lb G O", lb("0"), Over, Gross},
		{"columns, underload", columns, "+        lb G U", lb("0"), Under, Gross},
		{"columns, fault", columns, "+   XXXXXlb G F", lb("0"), Fault, Gross},
		{"pattern, at rest", pattern, "settled 52300 lb\r", lb("52300"), Stable, Gross},
		{"pattern, moving below zero", pattern, "moving -20 lb", lb("-20"), Motion, Gross},
		{"pattern, tonnes", pattern, "settled 23.72 t", quantity.Of("23.72", quantity.Tonne), Stable, Gross},
		{"pattern, overload", pattern, "too-heavy - lb", lb("0"), Over, Gross},
		{"bits, all clear", bits, "@ 52300", lb("52300"), Stable, Gross},
		{"bits, all but over", bits, "[ 23720", kg("-23720"), Motion, Net},
		{"bits, over outweighs motion", bits, "\x4c 52300", lb("0"), Over, Gross},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got, err := mustFormat(t, tt.profile).Parse([]byte(tt.body))
			if err != nil {
				t.Fatal(err)
			}
			if !got.Weight.Equal(tt.weight) || got.State != tt.state || got.Mode != tt.mode {
				t.Errorf("%q reads %s, %s, %s; want %s, %s, %s", tt.body, got.Weight, got.State, got.Mode, tt.weight, tt.state, tt.mode)
			}
			if got.IsStable() != (tt.state == Stable) {
				t.Errorf("%q: IsStable() = %v with state %s", tt.body, got.IsStable(), got.State)
			}
		})
	}
}

func TestParseRefuses(t *testing.T) {
	columns, pattern := ExampleColumns(), patternProfile()
	optional := patternProfile()
	optional.Pattern = `(?P<status>[a-z-]+) (?P<weight>[0-9]*)(?P<unit>x?)`
	optional.Fields[1].Means = map[string]string{"": "normal", "x": "lb"}
	tests := []struct {
		name    string
		profile Profile
		body    string
		want    errortest.Want
	}{
		{"a byte lost", columns, "+  52300lb G S", errortest.Device("14", "15")},
		{"a byte too many", columns, "+    52300lb G S", errortest.Device("16", "15")},
		{"unknown status", columns, "+   52300lb G ?", errortest.Device("?", "status")},
		{"blank status", columns, "+   52300lb G  ", errortest.Device("status")},
		{"unknown unit", columns, "+   52300oz G S", errortest.Device("oz", "unit")},
		{"a blank inside", columns, "+  5 2300lb G S", errortest.Device("5 2300")},
		{"an exponent", columns, "+   1e999lb G S", errortest.Device("1e999")},
		{"a comma", columns, "+  52,300lb G S", errortest.Device("52,300")},
		{"two points", columns, "+ 5.2.300lb G S", errortest.Device()},
		{"a point alone", columns, "+       .lb G S", errortest.Device()},
		{"no digits", columns, "+        lb G S", errortest.Device()},
		{"digits of another alphabet", columns, "+     ５lb G S", errortest.Device()},
		{"pattern in the middle only", pattern, "x settled 52300 lb", errortest.Device()},
		{"pattern with more behind", pattern, "settled 52300 lb lb", errortest.Device()},
		{"pattern too long", pattern, "settled " + strings.Repeat("1", 40) + " lb", errortest.Device()},
		{"too many digits", pattern, "settled 123456789012 lb", errortest.Device()},
		{"no unit", optional, "settled 52300", errortest.Device()},
		{"empty", columns, "", errortest.Device("0")},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got, err := mustFormat(t, tt.profile).Parse([]byte(tt.body))
			if !tt.want.Met(err) {
				t.Errorf("%q gave %+v, %v; want an error with %q", tt.body, got, err, tt.want)
			}
			if err != nil && (got.Raw != "" || got.State != Unsaid) {
				t.Errorf("%q was refused and still gave %+v", tt.body, got)
			}
		})
	}
}

func TestRawIsFitToKeep(t *testing.T) {
	got, err := mustFormat(t, packed()).Parse([]byte("\xc0 52300"))
	if err != nil || got.Raw != `\xc0 52300` {
		t.Errorf("Raw = %q, %v; want the first byte escaped", got.Raw, err)
	}
}

func draw(t *rapid.T) Reading {
	unit := rapid.SampledFrom([]quantity.Unit{quantity.Lb, quantity.Kg}).Draw(t, "unit")
	r := Reading{
		Weight: quantity.Int(rapid.Int64Range(-99_999, 9_999_999).Draw(t, "weight"), unit),
		State:  rapid.SampledFrom([]State{Stable, Motion, Under, Over, Fault}).Draw(t, "state"),
		Mode:   rapid.SampledFrom([]Mode{Gross, Net}).Draw(t, "mode"),
	}
	if !r.hasWeight() {
		r.Weight = quantity.Zero(unit)
	}
	return r
}

// What the simulator writes, the shipped profile reads, whole.
func TestExampleFramesRoundTrip(t *testing.T) {
	format := mustFormat(t, ExampleColumns())
	rapid.Check(t, func(t *rapid.T) {
		want := draw(t)
		got, err := bodies(strings.NewReader(string(exampleFrame(want))), ExampleColumns())
		if len(got) != 1 {
			t.Fatalf("frame %q gave %q, %v", exampleFrame(want), got, err)
		}
		read, err := format.Parse([]byte(got[0]))
		if err != nil || !read.Weight.Equal(want.Weight) || read.State != want.State || read.Mode != want.Mode {
			t.Fatalf("%+v was written %q and read %+v, %v", want, got[0], read, err)
		}
	})
}

// A frame with any one byte lost is refused: it never becomes another weight.
func TestALostByteIsNeverAWeight(t *testing.T) {
	format := mustFormat(t, ExampleColumns())
	rapid.Check(t, func(t *rapid.T) {
		frame := exampleFrame(draw(t))
		lost := rapid.IntRange(0, len(frame)-1).Draw(t, "lost")
		cut := string(frame[:lost]) + string(frame[lost+1:])
		got, _ := bodies(strings.NewReader(cut), ExampleColumns())
		for _, body := range got {
			if read, err := format.Parse([]byte(body)); err == nil {
				t.Fatalf("%q without byte %d was read as %s", frame, lost, read.Weight)
			}
		}
	})
}

func FuzzParse(f *testing.F) {
	for _, body := range []string{"+   52300lb G S", "-      20kg N M", "settled 52300 lb", "too-heavy - lb", "@ 52300", "\xff\x00"} {
		f.Add([]byte(body))
	}
	formats := []*Format{mustFormat(f, ExampleColumns()), mustFormat(f, patternProfile()), mustFormat(f, packed())}
	f.Fuzz(func(t *testing.T, body []byte) {
		for _, format := range formats {
			got, err := format.Parse(body)
			if err != nil {
				if !errortest.Device().Met(err) {
					t.Fatalf("error %q does not show the frame", err)
				}
				continue
			}
			if len(body) > format.profile.Length {
				t.Fatalf("%q is longer than the profile allows and was read", body)
			}
			if !got.Weight.Unit().IsMass() || got.State == Unsaid {
				t.Fatalf("%q gave %+v without unit or state", body, got)
			}
			figure, plain := got.Weight.Decimal()
			digits := strings.TrimLeft(figure.Abs().String(), "0")
			if !plain || got.hasWeight() && !strings.Contains(string(body), digits) && figure.Exponent() == 0 {
				t.Fatalf("%q gave %s, digits that are not in it", body, got.Weight)
			}
			if !got.hasWeight() && !got.Weight.IsZero() {
				t.Fatalf("%q is %s and still weighs %s", body, got.State, got.Weight)
			}
		}
	})
}
