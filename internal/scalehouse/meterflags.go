package scalehouse

import (
	"context"
	"slices"

	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/office"
)

// ofMeter are the flags that come from a meter's checks, whatever its reading.
var ofMeter = []moisture.Code{moisture.MeterFailed, moisture.MeterOverdue, moisture.NeverChecked}

// withMeterFlags flags a moisture that was typed in when its meter is past its check, outside its
// limit or never checked: so the flag is on every slip until the meter is rechecked. The bench's
// own tests have these flags already.
func (w *Batch) withMeterFlags(s load.Sample) (load.Sample, error) {
	if s.Moisture == nil || s.Moisture.Bench != nil {
		return s, nil
	}
	s.Flags = slices.DeleteFunc(slices.Clone(s.Flags), func(flag load.Flag) bool { return isOfMeter(flag.Code) })
	s.Stops = slices.DeleteFunc(slices.Clone(s.Stops), func(stop load.Stop) bool { return isOfMeter(stop.Code) })
	if s.Moisture.Meter == "" {
		return s, nil
	}
	flags, err := w.meterFlags(s.Moisture.Meter)
	for _, f := range flags {
		s = flagged(s, f)
	}
	return s, err
}

func isOfMeter(code string) bool { return slices.Contains(ofMeter, moisture.Code(code)) }

// flagged adds a flag to a sample, and to its stops if it stops the ticket.
func flagged(s load.Sample, f moisture.Flag) load.Sample {
	said := message.Kept{Text: f.Message()}
	s.Flags = append(s.Flags, load.Flag{Code: string(f.Code), Said: said})
	if f.Stops() {
		s.Stops = append(s.Stops, load.Stop{Code: string(f.Code), Sentence: said, Final: f.Final})
	}
	return s
}

// meterFlags are the flags of one of the elevator's meters today; another's meter has none. They
// are read once per batch, which may be thousands of loads.
func (w *Batch) meterFlags(id string) ([]moisture.Flag, error) {
	key := id + "\n" + w.desk.Today().String()
	if flags, known := w.doubted[key]; known {
		return flags, nil
	}
	ctx := context.Background()
	meters, err := office.Meters(ctx, w.desk)
	if err != nil {
		return nil, err
	}
	var flags []moisture.Flag
	if i := slices.IndexFunc(meters, func(m meter.Meter) bool { return m.ID == id }); i >= 0 {
		if flags, err = meterFlagsOf(ctx, w.desk, meters[i]); err != nil {
			return nil, err
		}
	}
	if w.doubted == nil {
		w.doubted = map[string][]moisture.Flag{}
	}
	w.doubted[key] = flags
	return flags, nil
}

func meterFlagsOf(ctx context.Context, d *Desk, m meter.Meter) ([]moisture.Flag, error) {
	stands, err := office.MeterStatus(ctx, d, m)
	if err != nil {
		return nil, err
	}
	setup, err := office.BenchSetup(ctx, d)
	if err != nil {
		return nil, err
	}
	return setup.Trust.OfMeter(m, stands), nil
}
