package audit_test

import (
	"testing"

	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/housetest"
)

// BenchmarkVerify is per load.
func BenchmarkVerify(b *testing.B) {
	const loads = 300
	s := housetest.New(b)
	must(b, s.Batch(ctx, func(w *scalehouse.Batch) error {
		for range loads {
			id, err := scalehouse.OpenLoad(ctx, w, housetest.Details())
			must(b, err)
			must(b, scalehouse.Weigh(ctx, w, id, housetest.ScaleWeight(load.Gross, 52300)))
			must(b, scalehouse.RecordSample(ctx, w, id, housetest.SampleOf("18.0", housetest.Found("test-weight", "54.2", quantity.LbPerBushel))))
			must(b, scalehouse.Weigh(ctx, w, id, housetest.ScaleWeight(load.Tare, 24300)))
			_, err = scalehouse.Issue(ctx, w, id)
			must(b, err)
		}
		return nil
	}))
	b.ResetTimer()
	for done := 0; done < b.N; done += loads {
		s.Verify()
	}
}
