package postgres

import (
	"fmt"
	"hash/fnv"
	"net/url"
	"regexp"
	"strings"

	"github.com/jackc/pgx/v5/pgxpool"

	"tenthpoint/internal/book/place"
	"tenthpoint/internal/message"
)

// defaultSchema is the schema of a book whose address names none.
const defaultSchema = "tenthpoint"

// An address says where a book is: a database, as PostgreSQL's own programs take it, and the schema
// in it.
type address struct {
	text   string // as it was typed
	server string // without the schema
	schema string
	name   string // of the database
}

// schemaName keeps to what needs no quotes anywhere.
var schemaName = regexp.MustCompile(`^[a-z_][a-z0-9_]{0,62}$`)

// parseAddress reads postgres://USER@HOST:PORT/DATABASE?schema=NAME. A password in it is refused: it
// would stand in the list of commands, and in the settings of the window.
func parseAddress(text string) (a address, err error) {
	u, err := url.Parse(text)
	if err != nil || !place.OnServer(text) {
		return a, message.Storage.Errorf("%q is no address of a book. Write it as postgres://USER@HOST/DATABASE", text)
	}
	if _, has := u.User.Password(); has || u.Query().Has("password") {
		return a, message.Storage.Errorf("a password does not belong into the address of a book. Put it into the file .pgpass of your home folder, or into PGPASSWORD")
	}
	query := u.Query()
	a = address{text: text, schema: query.Get("schema")}
	if a.schema == "" {
		a.schema = defaultSchema
	}
	if !schemaName.MatchString(a.schema) {
		return a, message.Storage.Errorf("%q is no name of a schema. Use small letters, digits and _", a.schema)
	}
	query.Del("schema")
	u.RawQuery = query.Encode()
	a.server, a.name = u.String(), strings.TrimPrefix(u.Path, "/")
	return a, nil
}

// settings are those of every connection. A connection that is cut off is given up by the server
// within ten seconds.
func (a address) settings() (*pgxpool.Config, error) {
	config, err := pgxpool.ParseConfig(a.server)
	if err != nil {
		return nil, message.Storage.Errorf("the address %s cannot be used: %w", a.text, err)
	}
	for name, value := range map[string]string{
		"search_path":                   a.schema,
		"application_name":              "tenthpoint",
		"client_encoding":               "UTF8",
		"lock_timeout":                  fmt.Sprint(lockTimeout.Milliseconds()),
		"tcp_keepalives_idle":           "3",
		"tcp_keepalives_interval":       "2",
		"tcp_keepalives_count":          "3",
		"tcp_user_timeout":              "10000",
		"default_transaction_isolation": "read committed",
	} {
		config.ConnConfig.RuntimeParams[name] = value
	}
	config.ConnConfig.ConnectTimeout = connectTimeout
	config.MaxConns = mostConnections
	return config, nil
}

// turn is the number of the lock by which the desks of this book take turns.
func (a address) turn() int64 {
	h := fnv.New64a()
	_, _ = h.Write([]byte("tenthpoint " + a.schema)) // it has no way to fail
	return int64(h.Sum64())
}
