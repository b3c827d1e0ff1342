package central

import (
	"errors"
	"net"

	"github.com/jackc/pgx/v5/pgconn"

	"tenthpoint/internal/message"
)

// The codes of PostgreSQL that have a sentence of their own.
const (
	noSuchDatabase  = "3D000"
	noSuchPerson    = "28000"
	wrongPassword   = "28P01"
	mayNot          = "42501"
	noSuchTable     = "42P01"
	noSuchSchema    = "3F000"
	takenAlready    = "23505"
	noSuchSite      = "23503"
	diskFull        = "53100"
	tooManyClients  = "53300"
	readOnlyServer  = "25006"
	notReadable     = "22P02"
	textNotReadable = "22023"
)

func code(err error) string {
	var said *pgconn.PgError
	if errors.As(err, &said) {
		return said.Code
	}
	return ""
}

func isMissing(err error) bool { return code(err) == noSuchTable || code(err) == noSuchSchema }

func isTaken(err error) bool { return code(err) == takenAlready }

// errUnreached is a server that did not answer, or ceased to. What was sent is kept or not: the next
// contact tells.
var errUnreached = message.Device.Errorf("the head office does not answer")

// sentence is the error of the server or the connection, in words with what to do.
func sentence(err error) error {
	if err == nil {
		return nil
	}
	switch code(err) {
	case noSuchDatabase:
		return message.NotFound.Errorf("the server has no such database. Check the address: %w", err)
	case noSuchPerson, wrongPassword:
		return message.NotSignedIn.Errorf("the server does not let this role in. Check the role, and the password that your system keeps for it: %w", err)
	case mayNot:
		return message.Refused.Errorf("this role may not do that at the head office. Sign in as one that may: %w", err)
	case diskFull:
		return message.Storage.Errorf("the disk of the head office is full. Nothing is lost: facts stay at the site and are sent when there is room: %w", err)
	case tooManyClients:
		return message.Device.Errorf("the head office has no connection free. Try again in a while: %w", err)
	case readOnlyServer:
		return message.Storage.Errorf("the server only reads, as a standby does. Name the one that writes: %w", err)
	case notReadable, textNotReadable:
		return message.Invalid.Errorf("the head office cannot read what was sent: %w", err)
	case "":
	default:
		return message.Storage.Errorf("the head office says: %w", err)
	}
	var unanswered net.Error
	var closed *pgconn.ConnectError
	if errors.As(err, &unanswered) || errors.As(err, &closed) || pgconn.SafeToRetry(err) || isCut(err) {
		return message.Device.Errorf("%w. Nothing is lost, and work goes on; what is not there yet is sent when it answers: %w", errUnreached, err)
	}
	return err
}
