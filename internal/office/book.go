package office

import (
	"context"
	"iter"
	"slices"

	"tenthpoint/internal/bin"
	"tenthpoint/internal/book"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/published"
	"tenthpoint/internal/textsearch"
)

// Book is a book to read answers from.
type Book interface {
	Journal
	LoadLists
	Shelf

	// Records are the master data of one kind, by id.
	Records(ctx context.Context, kind string) ([]book.Record, error)
	// Edition is the text of an edition kept, by its hash; EditionHashes are the
	// hashes of all texts that an id has had.
	Edition(ctx context.Context, sha string) (id, text string, err error)
	EditionHashes(ctx context.Context) (map[string][]string, error)
	// StockBefore is the position in the evening before a day, StockDays how it
	// moved from one day to another.
	StockBefore(ctx context.Context, day string) ([]book.StockRow, error)
	StockDays(ctx context.Context, from, to string) ([]book.StockRow, error)
	BinLists
}

// BinLists reads the content of the bins, and its owners, as the book keeps it day by day.
type BinLists interface {
	// BinsBefore is the last row before a day of every place, BinDays the rows of one bin or of all
	// from one day to another, Movements what was done in that time.
	BinsBefore(ctx context.Context, day string) ([]bin.Row, error)
	// BinBefore is that of one bin.
	BinBefore(ctx context.Context, name, day string) ([]bin.Row, error)
	BinDays(ctx context.Context, name, from, to string) ([]bin.Row, error)
	Movements(ctx context.Context, from, to string) ([]bin.Movement, error)
	// LinesBefore are the lines of owners in the evening before a day, LineDays how they changed.
	LinesBefore(ctx context.Context, day string) ([]book.StockRow, error)
	LineDays(ctx context.Context, from, to string) ([]book.StockRow, error)
}

// Journal is the facts of a book in their order.
type Journal interface {
	Facts(context.Context, book.FactFilter) iter.Seq2[journal.Fact, error]
	FactsOf(ctx context.Context, subject string) ([]journal.Fact, error)
	// Head is the last fact; some is false in an empty book.
	Head(context.Context) (last journal.Fact, some bool, err error)
}

// LoadLists are the loads as lists show them.
type LoadLists interface {
	Loads(context.Context, book.LoadFilter) ([]book.LoadRow, error)
	Search(context.Context, book.Search) ([]book.LoadRow, error)
	CountFound(context.Context, book.Search) (int64, error)
	LastTicketBefore(ctx context.Context, day string) (int64, error)
	// OwnersFor are the owners of the loads that a grower shares in, by load.
	OwnersFor(ctx context.Context, grower string) (map[string][]string, error)
}

// Shelf is the samples kept. Origins names the load that each sample was taken
// from, by the load that carries it on.
type Shelf interface {
	Shelf(context.Context, book.ShelfFilter) ([]book.ShelfRow, error)
	SamplesKept(ctx context.Context, from, to string) ([]book.KeptSamples, error)
	Origins(context.Context) (map[string]string, error)
}

// DayLists are the loads and the position that a day's sheet is added up from.
type DayLists interface {
	Loads(book.LoadFilter) ([]book.LoadRow, error)
	StockBefore(day string) ([]book.StockRow, error)
	LastTicketBefore(day string) (int64, error)
}

// Lists are the source of a sheet: the current book, or the book within a write so far. A day is
// closed with exactly the sheet of that moment.
type Lists interface {
	DayLists
	SamplesKept(from, to string) ([]book.KeptSamples, error)
	Records(kind string) ([]book.Record, error)
	FactsOf(subject string) ([]journal.Fact, error)
	BinsBefore(day string) ([]bin.Row, error)
	BinBefore(name, day string) ([]bin.Row, error)
	MovementsOn(day string) ([]bin.Movement, error)
}

// bookNow reads the current book.
type bookNow struct {
	ctx  context.Context
	book Book
}

func (b bookNow) Loads(f book.LoadFilter) ([]book.LoadRow, error) {
	return b.book.Loads(b.ctx, f)
}

func (b bookNow) StockBefore(day string) ([]book.StockRow, error) {
	return b.book.StockBefore(b.ctx, day)
}

func (b bookNow) BinsBefore(day string) ([]bin.Row, error) {
	return b.book.BinsBefore(b.ctx, day)
}

func (b bookNow) BinBefore(name, day string) ([]bin.Row, error) {
	return b.book.BinBefore(b.ctx, name, day)
}

func (b bookNow) MovementsOn(day string) ([]bin.Movement, error) {
	return b.book.Movements(b.ctx, day, day)
}

func (b bookNow) LastTicketBefore(day string) (int64, error) {
	return b.book.LastTicketBefore(b.ctx, day)
}

func (b bookNow) SamplesKept(from, to string) ([]book.KeptSamples, error) {
	return b.book.SamplesKept(b.ctx, from, to)
}

func (b bookNow) Records(kind string) ([]book.Record, error) {
	return b.book.Records(b.ctx, kind)
}

func (b bookNow) FactsOf(subject string) ([]journal.Fact, error) {
	return b.book.FactsOf(b.ctx, subject)
}

// ReadNow returns lists of the current book.
func ReadNow(ctx context.Context, d Desk) Lists { return bookNow{ctx, d.Reader()} }

// listsThen are the loads as they were when a fact was written.
type listsThen struct {
	rows  []book.LoadRow
	stock []book.StockRow
}

// listsUpTo replays every load by the facts up to a number.
func listsUpTo(ctx context.Context, d Desk, seq int64) (listsThen, error) {
	facts := map[string][]journal.Fact{}
	var order []string
	for f, err := range d.Reader().Facts(ctx, book.FactFilter{ToSeq: seq}) {
		if err != nil {
			return listsThen{}, err
		}
		if id, is := LoadOfSubject(f.Subject); is {
			if facts[id] == nil {
				order = append(order, id)
			}
			facts[id] = append(facts[id], f)
		}
	}
	var out listsThen
	var sum book.StockSum
	for _, id := range order {
		l, err := Replay(id, facts[id])
		if err != nil {
			return out, err
		}
		row := RowOf(l)
		if err := sum.Add(row); err != nil {
			return out, err
		}
		out.rows = append(out.rows, row)
	}
	out.stock = sum.Rows()
	return out, nil
}

// Loads selects by the day loads are listed under, or by a ticket.
func (l listsThen) Loads(f book.LoadFilter) ([]book.LoadRow, error) {
	var out []book.LoadRow
	for _, r := range l.rows {
		onDay := f.OnDay != "" && (r.IssuedDay == f.OnDay || r.EndedDay == f.OnDay)
		if onDay || f.Ticket > 0 && r.Ticket == f.Ticket {
			out = append(out, r)
		}
	}
	return out, nil
}

// LastTicketBefore is the last number of the last day before a day.
func (l listsThen) LastTicketBefore(day string) (int64, error) {
	last := book.LoadRow{}
	for _, r := range l.rows {
		before := r.Ticket > 0 && r.IssuedDay < day
		if before && (r.IssuedDay > last.IssuedDay || r.IssuedDay == last.IssuedDay && r.Ticket > last.Ticket) {
			last = r
		}
	}
	return last.Ticket, nil
}

// StockBefore is the position in the evening before a day.
func (l listsThen) StockBefore(day string) ([]book.StockRow, error) {
	var out []book.StockRow
	for i, r := range l.stock {
		ends := i+1 == len(l.stock) || !l.stock[i+1].SamePlace(r) || l.stock[i+1].Day >= day
		if r.Day < day && ends && !r.Weight.IsZero() {
			out = append(out, r)
		}
	}
	return out, nil
}

// RecordsOf reads all records of one kind as they now are.
func RecordsOf[F journal.Kinded](ctx context.Context, b Book) ([]F, error) {
	var zero F
	rows, err := b.Records(ctx, zero.Kind())
	if err != nil {
		return nil, err
	}
	return book.ReadRecords[F](rows)
}

// Growers are all growers by code, as they stand today: the house's own, and those that its head
// office publishes.
func Growers(ctx context.Context, d Desk) ([]elevator.Grower, error) {
	own, err := RecordsOf[elevator.Grower](ctx, d.Reader())
	if err != nil {
		return nil, err
	}
	received, err := RecordsOf[published.Received](ctx, d.Reader())
	return published.Growers(own, received, d.Today()), err
}

// Trucks are all trucks by number: 2 before 10.
func Trucks(ctx context.Context, d Desk) ([]elevator.Truck, error) {
	all, err := RecordsOf[elevator.Truck](ctx, d.Reader())
	slices.SortStableFunc(all, func(a, b elevator.Truck) int { return textsearch.Compare(a.ID, b.ID) })
	return all, err
}

// Bins are all pits and bins.
func Bins(ctx context.Context, d Desk) ([]elevator.Bin, error) {
	return RecordsOf[elevator.Bin](ctx, d.Reader())
}

// Contracts are all contracts.
func Contracts(ctx context.Context, d Desk) ([]elevator.ContractTerms, error) {
	return RecordsOf[elevator.ContractTerms](ctx, d.Reader())
}
