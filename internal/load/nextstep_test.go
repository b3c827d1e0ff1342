package load

import "testing"

// A load waits for its full weight, its test, its empty weight and its names, in this order.
func TestNextStep(t *testing.T) {
	unnamed := details()
	unnamed.Grower = Party{}
	leaving := details()
	leaving.Direction = Outbound
	for _, tt := range []struct {
		name  string
		facts []Fact
		want  Step
	}{
		{"just come", []Fact{Opened{Details: details()}}, WeighFull},
		{"tested before it is weighed", []Fact{Opened{Details: details()}, sampled("18.0")}, WeighFull},
		{"weighed full", []Fact{Opened{Details: details()}, gross(52300)}, TestSample},
		{"weighed twice", []Fact{Opened{Details: details()}, gross(52300), tare(24300)}, TestSample},
		{"tested", []Fact{Opened{Details: details()}, gross(52300), sampled("18.0")}, WeighEmpty},
		{"nobody's", []Fact{Opened{Details: unnamed}, gross(52300), sampled("18.0"), tare(24300)}, SayWhose},
		{"whole", []Fact{Opened{Details: details()}, gross(52300), sampled("18.0"), tare(24300)}, Finish},
		{"grain that leaves is not tested", []Fact{Opened{Details: leaving}, gross(52300)}, WeighEmpty},
	} {
		l := &Load{ID: "L1"}
		for _, f := range tt.facts {
			if err := l.Apply(Stamped{Fact: f}); err != nil {
				t.Fatal(err)
			}
		}
		if got := l.NextStep(); got != tt.want {
			t.Errorf("%s: waits for step %d, want %d", tt.name, got, tt.want)
		}
	}
}
