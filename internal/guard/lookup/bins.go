package lookup

import (
	"slices"

	"tenthpoint/internal/bin"
	"tenthpoint/internal/book"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/guard"
	"tenthpoint/internal/load"
)

// pit is the bin that the load's grain leaves, or that it comes to: where the usual path of its pit
// leads on, the one at the end of it.
func pit(lists Lists, l *load.Load, s *guard.Setting) (err error) {
	if l.Details.Bin == "" {
		return nil
	}
	id := func(b elevator.Bin) string { return b.ID }
	if s.Bin, err = recordOf(lists, l.Details.Bin, id); err != nil || l.Details.Direction == load.Outbound {
		return err
	}
	if to := s.Bin.Onward(l.Details.Commodity); to != "" {
		s.Bin, err = recordOf(lists, to, id)
	}
	return err
}

// stock is the content of that bin, and the lot of what was put there last.
func stock(lists Lists, l *load.Load, s *guard.Setting) error {
	name := s.Bin.ID
	if name == "" {
		name = l.Details.Bin
	}
	if name == "" {
		return nil
	}
	rows, err := lists.BinBefore(name, s.Today.AddDays(1).String())
	for _, r := range rows {
		s.InBin = append(s.InBin, StockOf(r.Place, r.Close)...)
		if err == nil && r.Commodity == l.Details.Commodity && s.Bin.Lot == "" && s.Lot == "" {
			s.Lot, err = Lot(lists, r.Place, r.Close, l.ID)
		}
	}
	return err
}

// StockOf is a heap as the guards see it; nothing for one of no grain.
func StockOf(p bin.Place, heap bin.Heap) []guard.Stock {
	lies := heap.Balance()
	if lies.IsZero() {
		return nil
	}
	return []guard.Stock{{Commodity: p.Commodity, Name: grain.NameOf(p.Commodity), Weight: lies}}
}

// lastLoads is the number of loads of a bin that are searched for one that came in.
const lastLoads = 9

// Lot is the lot of what was put on a heap last, by a movement or by a truck other than that of a
// load; empty for grain of no lot. Movements of a day lie on top of what its trucks brought, see
// [bin.CloseDay]. One that was undone put nothing there, and neither did its undoing.
func Lot(lists Lists, p bin.Place, heap bin.Heap, except string) (string, error) {
	if len(heap.Layers) == 0 {
		return "", nil
	}
	moves, err := lists.MovementsOn(heap.Layers[len(heap.Layers)-1].Filled.String())
	if err != nil {
		return "", err
	}
	for _, m := range slices.Backward(moves) {
		if m.Undoes != 0 || m.UndoneBy != 0 {
			continue
		}
		if m.Commodity == p.Commodity && slices.ContainsFunc(m.Into, func(w bin.Weighed) bool { return w.Bin == p.Bin }) {
			return m.Lot, nil
		}
	}
	last, err := lastLoad(lists, p, except)
	return last.Lot, err
}

// lastLoad is the last ticket whose grain went to a place, by way of any pit; a row of nothing where
// there is none.
func lastLoad(lists Lists, p bin.Place, except string) (last book.LoadRow, err error) {
	bins, err := book.RecordsIn[elevator.Bin](lists)
	if err != nil {
		return last, err
	}
	for _, b := range bins {
		if b.ID != p.Bin && b.Onward(p.Commodity) != p.Bin {
			continue
		}
		rows, err := lists.Loads(book.LoadFilter{Bin: b.ID, Commodity: p.Commodity, FromTicket: 1, Phases: []string{string(load.Ticketed)}, Newest: true, Limit: lastLoads})
		if err != nil {
			return last, err
		}
		came := slices.IndexFunc(rows, func(r book.LoadRow) bool {
			return r.Direction == string(load.Inbound) && r.ID != except && (r.Onward == p.Bin || r.Onward == "" && r.Bin == p.Bin)
		})
		if came >= 0 && rows[came].Ticket > last.Ticket {
			last = rows[came]
		}
	}
	return last, nil
}
