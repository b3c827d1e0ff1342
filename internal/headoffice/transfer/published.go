package transfer

import (
	"bufio"
	"context"
	"encoding/json"
	"io"
	"iter"

	"tenthpoint/internal/book"
	"tenthpoint/internal/headoffice"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
	"tenthpoint/internal/published"
)

// publishedForm names the way publications are written into a file for a stick.
const publishedForm = "tenthpoint publications, form 1"

// Publisher is the head office, as a site reads what it publishes.
type Publisher interface {
	Published(ctx context.Context, behind int64) iter.Seq2[published.Link, error]
	PublishedText(ctx context.Context, hash string) (string, error)
}

// Fetched is what a head office published since the last time.
type Fetched struct {
	News    []published.Received
	Next    published.Following
	Waiting int               // publications that the office has not signed yet
	Texts   map[string]string // of the editions, by hash
}

// Fetch reads what the head office published behind what a site knows, and checks it.
func Fetch(ctx context.Context, from Publisher, f published.Following) (out Fetched, err error) {
	if out.News, out.Next, out.Waiting, err = f.Take(from.Published(ctx, f.Seq)); err != nil {
		return out, err
	}
	out.Texts = map[string]string{}
	for _, r := range out.News {
		if r.Edition == nil || r.Withdrawn != "" {
			continue
		}
		if out.Texts[r.Edition.Hash], err = from.PublishedText(ctx, r.Edition.Hash); err != nil {
			return out, err
		}
	}
	return out, nil
}

// PackPublished writes the publications of the office's own book into a file for a stick. Of every
// other fact it holds no more than its place in the chain.
func PackPublished(ctx context.Context, b Book, letters string, to io.Writer) (packed int, err error) {
	if err := headoffice.CheckLetters(letters); err != nil {
		return 0, err
	}
	out := bufio.NewWriter(to)
	head, err := json.Marshal(stickHead{publishedForm, letters})
	if err != nil {
		return 0, err
	}
	out.Write(append(head, '\n')) // an error stays and comes back from Flush
	var end journal.Head
	for f, err := range b.Facts(ctx, book.FactFilter{}) {
		if err != nil {
			return packed, err
		}
		end = journal.HeadOf(f)
		var lines []byte
		if f.Kind == (published.Publication{}).Kind() {
			packed++
			if lines, err = textOf(ctx, b, f); err != nil {
				return packed, err
			}
		}
		if !published.Told(f) {
			f = journal.Fact{Seq: f.Seq, Prev: f.Prev, Hash: f.Hash}
		}
		if lines, err = (headoffice.Line{Fact: &f}).Append(lines); err != nil {
			return packed, err
		}
		out.Write(lines)
	}
	last, err := json.Marshal(stickEnd{end.Seq, end.Hash})
	if err != nil {
		return packed, err
	}
	out.Write(append(last, '\n'))
	return packed, out.Flush()
}

// textOf is the line of the text that a publication names; nothing for one without.
func textOf(ctx context.Context, b Book, f journal.Fact) ([]byte, error) {
	p, err := journal.ReadBody[published.Publication](f.Body)
	if err != nil || p.Edition == nil || p.Withdrawn != "" {
		return nil, err
	}
	id, text, err := b.Edition(ctx, p.Edition.Hash)
	if err != nil {
		return nil, err
	}
	return headoffice.Line{Text: &headoffice.Text{ID: id, SHA256: p.Edition.Hash, Text: text}}.Append(nil)
}

// A Stick holds the publications of an office in a file.
type Stick struct {
	Letters string
	links   []published.Link
	texts   map[string]string
}

// ReadStick reads a file that [PackPublished] wrote.
func ReadStick(file io.Reader) (*Stick, error) {
	s := &Stick{texts: map[string]string{}}
	var last []byte
	err := eachLine(file, func(line []byte) error {
		last = append(last[:0], line...)
		return s.line(line)
	})
	var end stickEnd
	switch {
	case err != nil:
		return nil, err
	case s.Letters == "":
		return nil, notPublications()
	case json.Unmarshal(last, &end) != nil || !isFrame(last):
		return nil, message.Invalid.Errorf("this file is cut off: its last line is missing. Copy it again; nothing was taken")
	}
	return s, nil
}

func notPublications() error {
	return message.Invalid.Errorf("this file holds nothing that a head office published. Name one that \"tenth office pack --published\" wrote")
}

func (s *Stick) line(line []byte) error {
	if s.Letters == "" {
		var head stickHead
		if json.Unmarshal(line, &head) != nil || head.Form != publishedForm {
			return notPublications()
		}
		s.Letters = head.Site
		return nil
	}
	if isFrame(line) {
		return nil
	}
	l, err := headoffice.ReadLine(line)
	switch {
	case err != nil:
		return err
	case l.Text != nil:
		s.texts[l.Text.SHA256] = l.Text.Text
	default:
		s.links = append(s.links, published.Link{Fact: *l.Fact, Withheld: l.Fact.Kind == ""})
	}
	return nil
}

// Published are the links in the file behind a fact.
func (s *Stick) Published(_ context.Context, behind int64) iter.Seq2[published.Link, error] {
	return func(yield func(published.Link, error) bool) {
		for _, l := range s.links {
			if l.Seq > behind && !yield(l, nil) {
				return
			}
		}
	}
}

// PublishedText is the text of an edition in the file.
func (s *Stick) PublishedText(_ context.Context, hash string) (string, error) {
	text, there := s.texts[hash]
	if !there {
		return "", message.Invalid.Errorf("the text of an edition is missing in this file. Have it packed again")
	}
	return text, nil
}
