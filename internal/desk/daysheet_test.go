package desk_test

import (
	"bytes"
	"os"
	"testing"

	"tenthpoint/internal/daysheet"
	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
)

var oct1, oct2 = quantity.MustDate("2026-10-01"), quantity.MustDate("2026-10-02")

func TestLook(t *testing.T) {
	s := newScene(t)
	for i := 0; i < 20; i++ {
		s.ticket()
		s.now = s.now.Add(17 * 60e9)
	}
	s.leave("Pit 1", 40000)
	s.arrive(50000)
	id := s.arrive(51000)
	s.as(manager)
	must(t, s.Refuse(ctx, id, "smells musty"))
	must(t, s.Void(ctx, 3, "wrong truck"))
	nid, err := s.Correct(ctx, 5, "wrong tare")
	must(t, err)
	s.weigh(nid, load.Tare, 24000)
	_, err = s.Issue(ctx, nid)
	must(t, err)
	must(t, s.CloseDay(ctx, oct1, "all well"))
	s.at("2026-10-02 14:00")
	must(t, s.Void(ctx, 7, "paid twice"))
	s.ticket()
	for _, day := range []quantity.Date{oct1, oct2} {
		d, err := s.DayPaper(ctx, day)
		must(t, err)
		b, err := d.PDF(report.Page{}.Wide())
		must(t, err)
		os.WriteFile("/tmp/day-"+day.String()+".pdf", b, 0o644)
		os.WriteFile("/tmp/day-"+day.String()+".txt", []byte(d.Text(110)), 0o644)
	}
	_ = bytes.Equal
	_ = daysheet.Make
}
