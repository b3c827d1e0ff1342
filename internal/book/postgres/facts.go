package postgres

import (
	"context"
	"iter"
	"strings"

	"github.com/jackc/pgx/v5"

	"tenthpoint/internal/book"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
)

const (
	factColumns = "seq, at, who, desk, kind, subject, body, prev, hash"
	selectFacts = "SELECT " + factColumns + " FROM facts"
)

func scanFact(row pgx.Row) (f journal.Fact, err error) {
	var body string
	err = row.Scan(&f.Seq, &f.At, &f.Who, &f.Desk, &f.Kind, &f.Subject, &body, &f.Prev, &f.Hash)
	f.Body = []byte(body)
	return f, err
}

// A factReader reads the journal.
type factReader struct{ reader }

// Facts reads the selected facts in order, all from one snapshot: it is one statement. It streams.
func (r factReader) Facts(ctx context.Context, filter book.FactFilter) iter.Seq2[journal.Fact, error] {
	return facts(r.during(ctx), filter)
}

func facts(s source, f book.FactFilter) iter.Seq2[journal.Fact, error] {
	w := factsWhere(f)
	return walk(s, scanFact, selectFacts+w.String()+" ORDER BY seq", w.args...)
}

// Words of the indexes: facts of a load before its ticket are in no index by kind, and only the
// hashes of issued tickets, which stand on slips, are in one.
const (
	listed = "substr(kind, 1, 5) <> 'load.'"
	coded  = "ticket.issued"
)

func factsWhere(f book.FactFilter) *where {
	w := &where{}
	switch {
	case f.Kind == coded && f.Hash != "":
		w.add("kind = '" + coded + "'")
	case f.Kind != "":
		w.text("kind", f.Kind)
		if !strings.HasPrefix(f.Kind, "load.") {
			w.add(listed)
		}
	}
	w.text("subject", f.Subject)
	if f.Hash != "" {
		w.add("hash >= ? AND hash < ?", f.Hash, f.Hash+"g")
	}
	if f.FromSeq > 0 {
		w.add("seq >= ?", f.FromSeq)
	}
	if f.ToSeq > 0 {
		w.add("seq <= ?", f.ToSeq)
	}
	return w
}

// FactsBySubject reads the facts of every subject that begins with a prefix, subject by subject in
// the order of their bytes, those of one in their order.
func (r factReader) FactsBySubject(ctx context.Context, prefix string) iter.Seq2[journal.Fact, error] {
	return walk(r.during(ctx), scanFact, selectFacts+" WHERE subject >= $1 AND subject < $2 ORDER BY subject, seq", prefix, prefix+lastOfAll)
}

// lastOfAll sorts behind every letter: no text of a book has the last sign of all.
const lastOfAll = "\U0010FFFF"

// FactsOf is everything that happened to a subject, in order.
func (r factReader) FactsOf(ctx context.Context, subject string) ([]journal.Fact, error) {
	return factsOf(r.during(ctx), subject)
}

func factsOf(s source, subject string) ([]journal.Fact, error) {
	return list(s, scanFact, selectFacts+" WHERE subject = $1 ORDER BY seq", subject)
}

// Head is the last fact; some is false for a book without any.
func (r factReader) Head(ctx context.Context) (last journal.Fact, some bool, err error) {
	return head(r.during(ctx))
}

func head(s source) (last journal.Fact, some bool, err error) {
	return one(s, scanFact, selectFacts+" ORDER BY seq DESC LIMIT 1")
}

// VerifyChain walks the whole chain and returns every break as a sentence naming the fact, and the
// number of facts read.
func (r factReader) VerifyChain(ctx context.Context) (problems []message.Text, count int64, err error) {
	return journal.Check(r.Facts(ctx, book.FactFilter{}))
}
