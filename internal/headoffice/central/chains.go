package central

import (
	"context"
	"encoding/hex"
	"errors"
	"io"
	"iter"
	"time"

	"github.com/jackc/pgx/v5"

	"tenthpoint/internal/headoffice"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
)

// isCut reports whether a connection ended in the middle.
func isCut(err error) bool {
	return errors.Is(err, io.EOF) || errors.Is(err, io.ErrUnexpectedEOF) || code(err) == "57P01"
}

// Receive hands lines of a site's chain to the server: texts first, then facts in order.
func (o *Office) Receive(ctx context.Context, letters string, lines []byte) (r headoffice.Receipt, err error) {
	var outcome string
	var seq *int64
	var hash *string
	var branch *int
	row := o.pool.QueryRow(ctx, "SELECT outcome, seq, hash, branch FROM receive($1, $2)", letters, string(lines))
	if err := row.Scan(&outcome, &seq, &hash, &branch); err != nil {
		return r, sentence(err)
	}
	r.Outcome = headoffice.Outcome(outcome)
	if seq != nil {
		r.Head.Seq = *seq
	}
	if hash != nil {
		r.Head.Hash = *hash
	}
	if branch != nil {
		r.Branch = *branch
	}
	return r, nil
}

// Greet notes the head that a site's book has.
func (o *Office) Greet(ctx context.Context, letters string, head journal.Head) error {
	_, err := o.pool.Exec(ctx, "SELECT greet($1, $2, $3)", letters, head.Seq, head.Hash)
	if code(err) == noSuchSite {
		return message.NotFound.Errorf("the head office has no site %v. Check the letters, or have the site added with \"tenth office add\"", letters)
	}
	return sentence(err)
}

// NoteBehind names a site whose book is an older copy.
func (o *Office) NoteBehind(ctx context.Context, letters string, head journal.Head) error {
	_, err := o.pool.Exec(ctx, "SELECT behind($1, $2)", letters, head.Seq)
	return sentence(err)
}

// Chains are the branches of a site, the first one first; with no letters those of every site.
func (o *Office) Chains(ctx context.Context, letters string) ([]headoffice.Chain, error) {
	rows, err := o.pool.Query(ctx, `SELECT site, branch, coalesce(letters, ''), coalesce(parent, 0), parent_seq, seq, encode(hash, 'hex'), came
		FROM chains WHERE $1 = '' OR site = $1 ORDER BY site, branch`, letters)
	if err != nil {
		return nil, sentence(err)
	}
	all, err := pgx.CollectRows(rows, func(r pgx.CollectableRow) (c headoffice.Chain, err error) {
		var came *time.Time
		err = r.Scan(&c.Site, &c.Branch, &c.Letters, &c.Parent, &c.ParentSeq, &c.Head.Seq, &c.Head.Hash, &came)
		if came != nil {
			c.Came = *came
		}
		return c, err
	})
	return all, sentence(err)
}

// Holds reports whether the office has a fact of that number and hash, in any branch of the site.
func (o *Office) Holds(ctx context.Context, letters string, head journal.Head) (bool, error) {
	if head.Seq == 0 {
		return true, nil
	}
	hash, err := hex.DecodeString(head.Hash)
	if err != nil {
		return false, message.Invalid.Errorf("%q is no hash", head.Hash)
	}
	var holds bool
	err = o.pool.QueryRow(ctx, "SELECT EXISTS (SELECT FROM facts WHERE site = $1 AND seq = $2 AND hash = $3)", letters, head.Seq, hash).Scan(&holds)
	return holds, sentence(err)
}

// TextHashes are the hashes of the texts that the office keeps of a site.
func (o *Office) TextHashes(ctx context.Context, letters string) (map[string]bool, error) {
	rows, err := o.pool.Query(ctx, "SELECT encode(sha256, 'hex') FROM texts WHERE site = $1", letters)
	if err != nil {
		return nil, sentence(err)
	}
	hashes, err := pgx.CollectRows(rows, pgx.RowTo[string])
	kept := make(map[string]bool, len(hashes))
	for _, hash := range hashes {
		kept[hash] = true
	}
	return kept, sentence(err)
}

// Texts are the texts that the office keeps of a site.
func (o *Office) Texts(ctx context.Context, letters string) ([]headoffice.Text, error) {
	rows, err := o.pool.Query(ctx, "SELECT id, encode(sha256, 'hex'), text FROM texts WHERE site = $1 ORDER BY id, sha256", letters)
	if err != nil {
		return nil, sentence(err)
	}
	all, err := pgx.CollectRows(rows, func(r pgx.CollectableRow) (t headoffice.Text, err error) {
		return t, r.Scan(&t.ID, &t.SHA256, &t.Text)
	})
	return all, sentence(err)
}

// pageOfFacts is the number of facts read from the server at once: a long chain is never held whole.
const pageOfFacts = 2000

// Facts reads a branch from a number on, as far as it shares them from the branches it comes from.
func (o *Office) Facts(ctx context.Context, c headoffice.Chain, from int64) iter.Seq2[journal.Fact, error] {
	return func(yield func(journal.Fact, error) bool) {
		for next := max(from, 1); ; next += pageOfFacts {
			page, err := o.page(ctx, c, next)
			if err != nil {
				yield(journal.Fact{}, err)
				return
			}
			for _, f := range page {
				if !yield(f, nil) {
					return
				}
			}
			if len(page) < pageOfFacts {
				return
			}
		}
	}
}

// page reads the facts of a branch from a number on. Where a branch has none, its parent's count, up
// to the last fact they share.
func (o *Office) page(ctx context.Context, c headoffice.Chain, from int64) ([]journal.Fact, error) {
	rows, err := o.pool.Query(ctx, `WITH RECURSIVE line(branch, parent, lowest, highest) AS (
			SELECT branch, parent, parent_seq + 1, seq FROM chains WHERE site = $1 AND branch = $2
			UNION ALL
			SELECT c.branch, c.parent, c.parent_seq + 1, line.lowest - 1 FROM line JOIN chains c ON c.site = $1 AND c.branch = line.parent)
		SELECT f.seq, f.at, f.who, f.desk, f.kind, f.subject, f.body, encode(f.prev, 'hex'), encode(f.hash, 'hex')
		FROM facts f JOIN line ON f.branch = line.branch AND f.seq BETWEEN line.lowest AND line.highest
		WHERE f.site = $1 AND f.seq >= $3 AND f.seq < $3 + $4 ORDER BY f.seq`, c.Site, c.Branch, from, int64(pageOfFacts))
	if err != nil {
		return nil, sentence(err)
	}
	facts, err := pgx.CollectRows(rows, func(r pgx.CollectableRow) (f journal.Fact, err error) {
		var body string
		err = r.Scan(&f.Seq, &f.At, &f.Who, &f.Desk, &f.Kind, &f.Subject, &body, &f.Prev, &f.Hash)
		f.Body = []byte(body)
		return f, err
	})
	return facts, sentence(err)
}

// A Contact is a site and the last that was heard of it.
type Contact struct {
	headoffice.Site
	At   time.Time    // when; zero for a site that never came
	Said journal.Head // the head its book had then
}

// Sites are all sites by their letters.
func (o *Office) Sites(ctx context.Context) ([]Contact, error) {
	rows, err := o.pool.Query(ctx, `SELECT s.site, s.name, s.role, c.at, coalesce(c.seq, 0), coalesce(encode(c.hash, 'hex'), '')
		FROM sites s LEFT JOIN contacts c USING (site) ORDER BY s.site`)
	if err != nil {
		return nil, sentence(err)
	}
	all, err := pgx.CollectRows(rows, func(r pgx.CollectableRow) (c Contact, err error) {
		var at *time.Time
		err = r.Scan(&c.Letters, &c.Name, &c.Role, &at, &c.Said.Seq, &c.Said.Hash)
		if at != nil {
			c.At = *at
		}
		return c, err
	})
	return all, sentence(err)
}

// Faults are all that was wrong with what sites sent, in the order it was found.
func (o *Office) Faults(ctx context.Context) ([]headoffice.Fault, error) {
	rows, err := o.pool.Query(ctx, "SELECT site, fault, seq, about, at FROM faults ORDER BY at, site, seq")
	if err != nil {
		return nil, sentence(err)
	}
	all, err := pgx.CollectRows(rows, func(r pgx.CollectableRow) (f headoffice.Fault, err error) {
		return f, r.Scan(&f.Site, &f.Name, &f.Seq, &f.About, &f.At)
	})
	return all, sentence(err)
}

// GiveLetters says under which letters a branch goes on. Only a person decides it.
func (o *Office) GiveLetters(ctx context.Context, letters string, branch int, given string) error {
	if err := headoffice.CheckLetters(given); err != nil {
		return err
	}
	done, err := o.pool.Exec(ctx, `UPDATE chains SET letters = $3 WHERE site = $1 AND branch = $2 AND branch > 1
		AND NOT EXISTS (SELECT FROM sites WHERE site = $3)`, letters, branch, given)
	switch {
	case isTaken(err):
		return message.Refused.Errorf("%v are the letters of another branch already. Give others", given)
	case err != nil:
		return sentence(err)
	case done.RowsAffected() == 0:
		return message.Refused.Errorf("site %v has no branch %d that could go on as %v: it is the first one, or these are the letters of a site. Look with \"tenth office sites\"", letters, branch, given)
	}
	return nil
}
