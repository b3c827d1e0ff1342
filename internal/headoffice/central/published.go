package central

import (
	"context"
	"iter"

	"github.com/jackc/pgx/v5"

	"tenthpoint/internal/message"
	"tenthpoint/internal/published"
)

// LaysDown has the site of some letters publish for all the others. There is one that does.
func (o *Office) LaysDown(ctx context.Context, letters string) error {
	var known bool
	err := o.pool.QueryRow(ctx, "SELECT lays_down($1)", letters).Scan(&known)
	if err == nil && !known {
		return message.NotFound.Errorf("the head office has no site %v. Check the letters, or have the site added with \"tenth office add\"", letters)
	}
	return sentence(err)
}

// linkColumns are the columns of a link; nothing is told of a fact that is withheld.
const linkColumns = "seq, prev, hash, told, coalesce(at, ''), coalesce(who, ''), coalesce(desk, ''), coalesce(kind, ''), coalesce(subject, ''), coalesce(body, '')"

// Published are the links of the chain that publishes, behind a fact.
func (o *Office) Published(ctx context.Context, behind int64) iter.Seq2[published.Link, error] {
	return func(yield func(published.Link, error) bool) {
		for {
			page, err := o.publishedPage(ctx, behind)
			if err != nil {
				yield(published.Link{}, err)
				return
			}
			for _, link := range page {
				if !yield(link, nil) {
					return
				}
				behind = link.Seq
			}
			if len(page) < pageOfFacts {
				return
			}
		}
	}
}

func (o *Office) publishedPage(ctx context.Context, behind int64) ([]published.Link, error) {
	rows, err := o.pool.Query(ctx, "SELECT "+linkColumns+" FROM published($1, $2)", behind, pageOfFacts)
	if err != nil {
		return nil, sentence(err)
	}
	links, err := pgx.CollectRows(rows, func(r pgx.CollectableRow) (l published.Link, err error) {
		var told bool
		var body string
		err = r.Scan(&l.Seq, &l.Prev, &l.Hash, &told, &l.At, &l.Who, &l.Desk, &l.Kind, &l.Subject, &body)
		l.Body, l.Withheld = []byte(body), !told
		return l, err
	})
	return links, sentence(err)
}

// PublishedText is the text of an edition that was published, by its hash.
func (o *Office) PublishedText(ctx context.Context, hash string) (string, error) {
	var text *string
	if err := o.pool.QueryRow(ctx, "SELECT published_text($1)", hash).Scan(&text); err != nil {
		return "", sentence(err)
	}
	if text == nil {
		return "", message.NotFound.Errorf("the head office has no text of the edition %.12s. It comes when the office has sent its own book whole", hash)
	}
	return *text, nil
}
