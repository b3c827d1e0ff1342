package postgres

import (
	"context"
	"time"

	"github.com/jackc/pgx/v5"

	"tenthpoint/internal/book"
	"tenthpoint/internal/digest"
	"tenthpoint/internal/message"
)

const selectRecords = "SELECT kind, id, seq, body FROM standing"

// A recordReader reads master data, the numbers given out, and the editions that settled tickets.
type recordReader struct{ reader }

// Records lists the records of a kind by id.
func (r recordReader) Records(ctx context.Context, kind string) ([]book.Record, error) {
	return records(r.during(ctx), kind)
}

func records(s source, kind string) ([]book.Record, error) {
	return list(s, scanRecord, selectRecords+" WHERE kind = $1 ORDER BY id", kind)
}

// AllRecords are the records of every kind, by kind and id.
func (r recordReader) AllRecords(ctx context.Context) ([]book.Record, error) {
	return allRecords(r.during(ctx))
}

func allRecords(s source) ([]book.Record, error) {
	return list(s, scanRecord, selectRecords+" ORDER BY kind, id")
}

func scanRecord(row pgx.Row) (s book.Record, err error) {
	var body string
	err = row.Scan(&s.Kind, &s.ID, &s.Seq, &body)
	s.Body = []byte(body)
	return s, err
}

// LastNumber is the last number a series has given out; 0 for a series that has not begun.
func (r recordReader) LastNumber(ctx context.Context, series string) (int64, error) {
	return lastNumber(r.during(ctx), series)
}

func lastNumber(s source, series string) (int64, error) {
	n, _, err := one(s, scanNumber, "SELECT last FROM series WHERE name = $1", series)
	return n, err
}

// Series are the names of all series that have begun.
func (r recordReader) Series(ctx context.Context) ([]string, error) {
	return seriesNames(r.during(ctx))
}

func seriesNames(s source) ([]string, error) {
	return list(s, scanText, "SELECT name FROM series ORDER BY name")
}

// An edition is a text with the hash it is known by.
type edition struct{ sha, id, text string }

const selectEditions = "SELECT sha256, id, text FROM editions"

func scanEdition(row pgx.Row) (e edition, err error) {
	err = row.Scan(&e.sha, &e.id, &e.text)
	return e, err
}

// Edition is the edition whose text has the hash.
func (r recordReader) Edition(ctx context.Context, sha string) (id, text string, err error) {
	e, some, err := one(r.during(ctx), scanEdition, selectEditions+" WHERE sha256 = $1", sha)
	if err == nil && !some {
		err = message.Storage.Errorf("The book %s keeps no edition with the hash %s.", r.line.address.text, sha)
	}
	return e.id, e.text, err
}

// EditionHashes are the hashes of the texts that the book keeps, by the id of the edition.
func (r recordReader) EditionHashes(ctx context.Context) (map[string][]string, error) {
	hashes := map[string][]string{}
	all, err := list(r.during(ctx), scanEdition, "SELECT sha256, id, '' FROM editions ORDER BY sha256")
	for _, e := range all {
		hashes[e.id] = append(hashes[e.id], e.sha)
	}
	return hashes, err
}

// VerifyEditions compares every edition's text with the hash it is known by.
func (r recordReader) VerifyEditions(ctx context.Context) (problems []message.Text, count int64, err error) {
	err = r.during(ctx).each(func(rows pgx.Rows) error {
		e, err := scanEdition(rows)
		count++
		if now := digest.Of(e.text); err == nil && now != e.sha {
			problems = append(problems, message.New(
				"The edition %q was changed after it was kept: it carries hash %q, its text now gives %.12s...", e.id, e.sha, now))
		}
		return err
	}, selectEditions+" ORDER BY id, sha256")
	return problems, count, err
}

// A draftReader reads what is typed and no fact yet.
type draftReader struct{ reader }

// Drafts are all drafts of the book, by place and id.
func (r draftReader) Drafts(ctx context.Context) ([]book.Draft, error) {
	return list(r.during(ctx), scanDraft, "SELECT place, id, at, who, texts FROM drafts ORDER BY place, id")
}

func scanDraft(row pgx.Row) (d book.Draft, err error) {
	err = row.Scan(&d.Place, &d.ID, &d.At, &d.Who, &d.Texts)
	return d, err
}

// saveTimeout is the timeout for saving what is being typed. The next one brings the same text
// again.
const saveTimeout = 250 * time.Millisecond

// SaveDraft keeps a draft at once; without texts the draft goes.
func (b *Book) SaveDraft(d book.Draft) error {
	if err := b.mayWrite(); err != nil {
		return err
	}
	ctx, done := context.WithTimeout(context.Background(), saveTimeout)
	defer done()
	if d.Texts == "" {
		return b.exec(ctx, "DELETE FROM drafts WHERE place = $1 AND id = $2", d.Place, d.ID)
	}
	return b.exec(ctx, `INSERT INTO drafts (place, id, at, who, texts) VALUES ($1, $2, $3, $4, $5)
		ON CONFLICT (place, id) DO UPDATE SET at = $3, who = $4, texts = $5`, d.Place, d.ID, d.At, d.Who, d.Texts)
}
