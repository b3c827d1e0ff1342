package board

import (
	"slices"
	"testing"

	"tenthpoint/internal/load"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// A truck is pointed at once it has waited longer than the limit, and not before; a wait that cannot
// be known is not told.
func TestWaits(t *testing.T) {
	tests := []struct {
		since, now, want string
		late             bool
	}{
		{"2025-10-14T12:00:00Z", "2025-10-14T12:00:59Z", "just came", false},
		{"2025-10-14T12:00:00Z", "2025-10-14T12:01:00Z", "1 min", false},
		{"2025-10-14T12:00:00Z", "2025-10-14T12:45:59Z", "45 min", false},
		{"2025-10-14T12:00:00Z", "2025-10-14T12:46:00Z", "46 min", true},
		{"2025-10-14T12:00:00Z", "2025-10-14T13:05:00Z", "1 h 05 min", true},
		{"2025-10-14T12:00:00Z", "2025-10-16T12:00:00Z", "2 days", true},
		{"2025-10-14T12:00:00Z", "2025-10-14T11:00:00Z", "", false},
		{"", "2025-10-14T11:00:00Z", "", false},
	}
	for _, tt := range tests {
		row := RowOf(session.Language{}, &load.Load{Opened: load.Stamp{At: tt.since}}, false, tt.now, 45)
		if row.Waits != tt.want || row.Late != tt.late {
			t.Errorf("from %s to %s is %q, late %v; want %q, %v", tt.since, tt.now, row.Waits, row.Late, tt.want, tt.late)
		}
	}
}

// A truck stands in the column of what it waits for, in the order of the yard.
func TestColumns(t *testing.T) {
	rows := []model.TruckRow{{ID: "a", Column: 1}, {ID: "b", Column: 4}, {ID: "c", Column: 1}}
	columns := Columns(session.Language{}, rows)
	if len(columns) != 5 || !slices.Equal(columns[1].Rows, []model.TruckRow{rows[0], rows[2]}) || len(columns[4].Rows) != 1 || len(columns[0].Rows) != 0 {
		t.Errorf("the board is %+v", columns)
	}
	for _, tt := range []struct {
		step    load.Step
		settles bool
		want    int
	}{{load.WeighFull, false, 0}, {load.TestSample, false, 1}, {load.WeighEmpty, false, 2}, {load.SayWhose, false, 3}, {load.Finish, false, 3}, {load.Finish, true, 4}} {
		if got := columnOf(tt.step, tt.settles); got != tt.want {
			t.Errorf("step %d that settles %v is in column %d, want %d", tt.step, tt.settles, got, tt.want)
		}
	}
}

// A truck moves past the one beside it, over free places, and never off the end.
func TestPlacesMove(t *testing.T) {
	p := Places{0: "a", 2: "b", 3: "c"}
	if !p.Move("b", -1) || p != (Places{0: "b", 2: "a", 3: "c"}) {
		t.Errorf("b went up over the free place: %v", p)
	}
	if p.Move("b", -1) || p.Move("c", +1) || p.Move("unknown", 1) {
		t.Errorf("something moved past an end: %v", p)
	}
	if p.Order([]string{"c", "a"}); p != (Places{0: "c", 1: "a"}) {
		t.Errorf("put in order the places are %v", p)
	}
}
