package postgres

import (
	"context"
	"errors"
	"io"
	"net"
	"os"

	"github.com/jackc/pgx/v5/pgconn"

	"tenthpoint/internal/book"
	"tenthpoint/internal/message"
)

// errCut is wrapped by the sentences about a line that is cut; errSilent is the end of a use in which
// the server said nothing for too long.
var (
	errCut    = message.Storage.Errorf("the line is cut")
	errSilent = message.Storage.Errorf("the server said nothing for too long")
)

// Codes of the server that have a sentence of their own.
const (
	overtaken        = "40001"
	lockNotAvailable = "55P03"
	noSuchDatabase   = "3D000"
	noSuchRole       = "28000"
	wrongPassword    = "28P01"
	noRights         = "42501"
	noSuchUser       = "42704"
	noSuchTable      = "42P01"
	noSuchSchema     = "3F000"
	diskFull         = "53100"
	tooMany          = "53300"
	readOnlyServer   = "25006"
)

// sentence translates an error of the server or of the line into one that says what happened to the
// book and what to do. Other errors pass unchanged.
func (a address) sentence(err error) error {
	if err == nil || errors.Is(err, context.Canceled) || message.KindOf(err) != "" && !errors.Is(err, errSilent) {
		return err
	}
	var said *pgconn.PgError
	if errors.As(err, &said) && !isShutdown(said) {
		return a.refusal(said)
	}
	var connecting *pgconn.ConnectError
	if errors.As(err, &connecting) || isCut(err) {
		return message.Storage.Errorf("the server of the book %s does not answer. Nothing is lost: what is typed stays on this computer, and work goes on when the line is back. "+
			"Check the cable, the address and that the server runs: %w", a.text, cutBecause(err))
	}
	return message.Errorf("the book %s refused: %w", a.text, err)
}

// refusal is the sentence for what the server itself said.
func (a address) refusal(said *pgconn.PgError) error {
	switch said.Code {
	case lockNotAvailable, overtaken:
		return message.Storage.Errorf("another desk is writing in the book %s. Nothing was entered. Try again: %w", a.text, book.ErrBusy)
	case noSuchDatabase:
		return message.NotFound.Errorf("there is no database %q on the server. Check the address, or have it made: createdb %s", a.name, a.name)
	case noSuchRole, wrongPassword:
		return message.Storage.Errorf("the server of the book %s does not let you in: %w. Check the user in the address, and the password in .pgpass or PGPASSWORD", a.text, said)
	case noRights:
		return message.Storage.Errorf("you may not do this in the book %s: %w. Whoever owns the book lets you in: tenth let-in", a.text, said)
	case noSuchTable, noSuchSchema:
		return message.NotFound.Errorf("there is no book in the schema %s of the database %q. Check the address, or create a book there", a.schema, a.name)
	case diskFull:
		return message.Storage.Errorf("the disk of the server of the book %s is full. Nothing was entered. Make room there, then try again: %w", a.text, said)
	case tooMany:
		return message.Storage.Errorf("the server of the book %s has no connection left. Close a desk, or raise max_connections: %w", a.text, said)
	case readOnlyServer:
		return message.Storage.Errorf("the server of the book %s only reads: it is a standby, or was set so. Nothing was entered. Check the address: %w", a.text, said)
	}
	return message.Errorf("the book %s refused: %w", a.text, said)
}

// cutBecause is a cut line with the innermost reason there is: what wraps it names every address that
// was tried.
func cutBecause(err error) error {
	for {
		var inner error
		switch outer := err.(type) {
		case interface{ Unwrap() error }:
			inner = outer.Unwrap()
		case interface{ Unwrap() []error }:
			inner = outer.Unwrap()[0]
		}
		if inner == nil || errors.Is(err, errSilent) {
			return message.Storage.Errorf("%w (%w)", errCut, err)
		}
		err = inner
	}
}

// isShutdown reports whether the server is going away or coming up: to a desk that is a cut line.
func isShutdown(said *pgconn.PgError) bool {
	switch said.Code {
	case "57P01", "57P02", "57P03":
		return true
	}
	return false
}

// isOurs reports whether a use of the line was ended by this package.
func isOurs(cause error) bool { return errors.Is(cause, errSilent) || errors.Is(cause, errCut) }

// isCut reports whether an error is about the line, and not about what was asked.
func isCut(err error) bool {
	var said *pgconn.PgError
	if errors.As(err, &said) {
		return isShutdown(said)
	}
	var network net.Error
	var connecting *pgconn.ConnectError
	return isOurs(err) || errors.As(err, &network) || errors.As(err, &connecting) ||
		errors.Is(err, io.EOF) || errors.Is(err, io.ErrUnexpectedEOF) || errors.Is(err, net.ErrClosed) || errors.Is(err, os.ErrDeadlineExceeded) || pgconn.SafeToRetry(err)
}
