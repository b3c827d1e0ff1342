package transfer

import (
	"bufio"
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"io"

	"tenthpoint/internal/book"
	"tenthpoint/internal/headoffice"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
)

// stickForm names the way a file on a stick is written.
const stickForm = "tenthpoint chain, form 1"

// stickHead is the first line of a file on a stick, stickEnd its last. Between them are the lines
// that would go over the wire.
type stickHead struct {
	Form string `json:"form"`
	Site string `json:"site"`
}

type stickEnd struct {
	End  int64  `json:"end,string"`
	Hash string `json:"end_hash"`
}

// Pack writes what follows a head of a book, with the texts it keeps, for a stick. With an empty head
// it is all of the book.
func Pack(ctx context.Context, b Book, letters string, since journal.Head, to io.Writer) (journal.Head, error) {
	if err := headoffice.CheckLetters(letters); err != nil {
		return journal.Head{}, err
	}
	out := bufio.NewWriter(to)
	write := func(v any) error {
		text, err := json.Marshal(v)
		if err == nil {
			_, err = out.Write(append(text, '\n'))
		}
		return err
	}
	if err := write(stickHead{stickForm, letters}); err != nil {
		return journal.Head{}, err
	}
	var line []byte
	lines := func(l headoffice.Line) (err error) {
		if line, err = l.Append(line[:0]); err == nil {
			_, err = out.Write(line)
		}
		return err
	}
	for l, err := range textLines(ctx, b, nil) {
		if err != nil {
			return journal.Head{}, err
		}
		if err := lines(l); err != nil {
			return journal.Head{}, err
		}
	}
	end := since
	for f, err := range b.Facts(ctx, book.FactFilter{FromSeq: max(since.Seq, 1)}) {
		if err != nil {
			return end, err
		}
		if f.Seq == since.Seq {
			if !since.Holds(f) {
				return end, message.Refused.Errorf("fact %d of this book is not the one that the head office has. Pack all of the book, without a head", since.Seq)
			}
			continue
		}
		if err := lines(headoffice.Line{Fact: &f}); err != nil {
			return end, err
		}
		end = journal.HeadOf(f)
	}
	if err := write(stickEnd{end.Seq, end.Hash}); err != nil {
		return end, err
	}
	return end, out.Flush()
}

// mostOfALine is the longest line of a file that is read: a fact's details are at most a megabyte,
// and signs in them may be spelled longer.
const mostOfALine = 8 << 20

// Take hands a file from a stick to the office, in batches. The whole file is looked over first: one
// that is cut off or is another kind of file changes nothing.
func Take(ctx context.Context, file io.ReadSeeker, office Office, o Options) (letters string, sent Sent, err error) {
	head, end, err := lookOver(file)
	if err != nil {
		return head.Site, sent, err
	}
	if _, err := file.Seek(0, io.SeekStart); err != nil {
		return head.Site, sent, err
	}
	s := &sending{ctx: ctx, office: office, letters: head.Site, o: o, head: end}
	if err := office.Greet(ctx, head.Site, end); err != nil {
		return head.Site, sent, err
	}
	batch := s.batch()
	err = eachLine(file, func(line []byte) error {
		if isFrame(line) {
			return nil
		}
		l, err := headoffice.ReadLine(line)
		if err != nil {
			return err
		}
		if err := batch.add(l); err != nil {
			return err
		}
		return batch.fault()
	})
	if err != nil {
		return head.Site, s.out, err
	}
	if _, err := batch.send(); err != nil {
		return head.Site, s.out, err
	}
	return head.Site, s.out, batch.fault()
}

// fault is an error that a stick cannot mend: the office is elsewhere, and nobody can be asked for the rest.
func (b *batch) fault() error {
	if !b.lost {
		return nil
	}
	return message.Refused.Errorf("what is on the stick does not follow what the head office has of %v. Pack it again from the head that \"tenth office sites\" shows, or all of the book", b.s.letters)
}

// isFrame reports whether a line is the first or the last of a file.
func isFrame(line []byte) bool {
	return bytes.HasPrefix(line, []byte(`{"form"`)) || bytes.HasPrefix(line, []byte(`{"end"`))
}

// lookOver reads the frame of a file.
func lookOver(file io.Reader) (head stickHead, end journal.Head, err error) {
	var last []byte
	first := true
	err = eachLine(file, func(line []byte) error {
		if first {
			first = false
			if json.Unmarshal(line, &head) != nil || head.Form != stickForm {
				return message.Invalid.Errorf("this file holds no chain of a site. Name one that \"tenth office pack\" wrote")
			}
		}
		last = append(last[:0], line...)
		return nil
	})
	if err != nil {
		return head, end, err
	}
	var ending stickEnd
	if json.Unmarshal(last, &ending) != nil || !bytes.HasPrefix(last, []byte(`{"end"`)) {
		return head, end, message.Invalid.Errorf("this file is cut off: its last line is missing. Copy it again; nothing was taken")
	}
	return head, journal.Head{Seq: ending.End, Hash: ending.Hash}, nil
}

func eachLine(file io.Reader, act func([]byte) error) error {
	lines := bufio.NewScanner(file)
	lines.Buffer(nil, mostOfALine)
	for lines.Scan() {
		if err := act(lines.Bytes()); err != nil {
			return err
		}
	}
	if errors.Is(lines.Err(), bufio.ErrTooLong) {
		return message.Invalid.Errorf("this file holds no chain of a site: a line of it is too long")
	}
	return lines.Err()
}
