package office_test

import (
	"testing"

	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse/housetest"
	"tenthpoint/internal/scalehouse/instruments"
	"tenthpoint/internal/worksheet"
)

// A meter's status follows its checks, and its bias is shown.
func TestMeterLog(t *testing.T) {
	s := housetest.BenchScene(t)
	meters, err := office.Meters(ctx, s.Desk)
	must(t, err)
	stands, err := office.MeterStatus(ctx, s.Desk, meters[0])
	must(t, err)
	if stands.State != meter.Good {
		t.Errorf("a meter checked today is %s: %s", stands.State, stands.Sentence)
	}
	s.At("2026-11-20 12:00")
	if stands, err = office.MeterStatus(ctx, s.Desk, meters[0]); err != nil || stands.State != meter.Overdue {
		t.Errorf("seven weeks later the meter is %s, %v", stands.State, err)
	}
	checks, err := office.MeterChecks(ctx, s.Desk, meters[0].ID)
	must(t, err)
	bias, err := meter.WorkBias(&worksheet.Sheet{}, meter.ChecksOf(meters[0], checks, s.Today()), 0)
	must(t, err)
	if bias.N != 1 || bias.Mean == nil {
		t.Errorf("one check gives %+v", bias)
	}
	refused(t, instruments.CheckMeter(ctx, s.Desk, meter.Check{Meter: "none", Calibration: "x", Crop: "corn", Reference: quantity.Of("16.0", quantity.Percent), Reading: quantity.Of("16.1", quantity.Percent), Sample: quantity.Int(70, quantity.Fahrenheit)}), errortest.NotFound())
}
