// Package central is the head office's side: the chains of all sites in one PostgreSQL database.
//
// The server checks what it is sent. A site's role can read its own chain and call receive, which
// works out every hash again and refuses what does not follow; no role may change or delete a fact.
// This package only speaks to it, in sentences.
package central

import (
	"context"
	"embed"
	"errors"
	"fmt"
	"io/fs"
	"strings"

	"github.com/jackc/pgx/v5"
	"github.com/jackc/pgx/v5/pgxpool"

	"tenthpoint/internal/headoffice"
	"tenthpoint/internal/message"
)

//go:embed schema/*.sql
var schemaFiles embed.FS

// An Office is a head office on a server. It is safe for use by several goroutines.
type Office struct {
	pool   *pgxpool.Pool
	schema string
}

// connections is the number of connections an office uses at once: one sends or reads, another looks something up.
const connections = 4

// Open opens an office that is there. The server is named as everywhere with PostgreSQL, by an
// address or by key words; a password comes from where libpq has it, and is kept nowhere.
func Open(ctx context.Context, server, schema string) (*Office, error) {
	o, err := connect(ctx, server, schema)
	if err != nil {
		return nil, err
	}
	if err := o.hasTables(ctx); err != nil {
		return nil, errors.Join(err, o.Close())
	}
	return o, nil
}

func connect(ctx context.Context, server, schema string) (*Office, error) {
	config, err := pgxpool.ParseConfig(server)
	if err != nil {
		return nil, message.Invalid.Errorf("%q is no address of a server. Write postgres://PERSON@HOST/DATABASE", server)
	}
	config.MaxConns = connections
	config.ConnConfig.RuntimeParams["search_path"] = pgx.Identifier{schema}.Sanitize()
	config.ConnConfig.RuntimeParams["application_name"] = "tenth"
	pool, err := pgxpool.NewWithConfig(ctx, config)
	if err != nil {
		return nil, sentence(err)
	}
	o := &Office{pool, schema}
	if err := pool.Ping(ctx); err != nil {
		return nil, errors.Join(sentence(err), o.Close())
	}
	return o, nil
}

// Close releases the connections.
func (o *Office) Close() error {
	o.pool.Close()
	return nil
}

// steps are the texts of the tables, in order.
func steps() ([]string, error) {
	files, err := fs.Glob(schemaFiles, "schema/*.sql")
	if err != nil {
		return nil, err
	}
	texts := make([]string, len(files))
	for i, file := range files {
		text, err := schemaFiles.ReadFile(file)
		if err != nil {
			return nil, err
		}
		texts[i] = string(text)
	}
	return texts, nil
}

// hasTables refuses a database without an office, or with one that is older than this program. A
// newer office takes what this program sends: its functions stay as they are.
func (o *Office) hasTables(ctx context.Context) error {
	known, err := steps()
	if err != nil {
		return err
	}
	var done int
	err = o.pool.QueryRow(ctx, "SELECT max(step) FROM office_steps").Scan(&done)
	switch {
	case isMissing(err):
		return message.NotFound.Errorf("there is no head office %v in this database that this role may use. Check the address and the role, or make one with \"tenth office setup\"", o.schema)
	case err != nil:
		return sentence(err)
	case done < len(known):
		return message.Storage.Errorf("the head office %v is older than this program: its tables are at step %d of %d. Bring it up to date with \"tenth office setup\"", o.schema, done, len(known))
	}
	return nil
}

// SetUp makes an office in a database, or brings one up to date. Who does it keeps the office.
func SetUp(ctx context.Context, server, schema string) (*Office, error) {
	o, err := connect(ctx, server, schema)
	if err != nil {
		return nil, err
	}
	err = pgx.BeginFunc(ctx, o.pool, func(tx pgx.Tx) error { return o.bringUpToDate(ctx, tx) })
	if err != nil {
		return nil, errors.Join(sentence(err), o.Close())
	}
	return o, nil
}

func (o *Office) bringUpToDate(ctx context.Context, tx pgx.Tx) error {
	for _, statement := range o.beginning() {
		if _, err := tx.Exec(ctx, statement); err != nil {
			return err
		}
	}
	var done int
	if err := tx.QueryRow(ctx, "SELECT coalesce(max(step), 0) FROM office_steps").Scan(&done); err != nil {
		return err
	}
	texts, err := steps()
	if err != nil {
		return err
	}
	for n := done; n < len(texts); n++ {
		if _, err := tx.Exec(ctx, o.named().Replace(texts[n])); err != nil {
			return err
		}
		if _, err := tx.Exec(ctx, "INSERT INTO office_steps (step) VALUES ($1)", n+1); err != nil {
			return err
		}
	}
	_, err = tx.Exec(ctx, o.named().Replace("REVOKE CREATE ON SCHEMA {{schema}} FROM {{receiver}}"))
	return err
}

// beginning are the statements before the first step: the schema, the roles, the list of steps.
// Roles belong to the whole server and may be there from an office in another database.
func (o *Office) beginning() []string {
	var out []string
	out = append(out, "CREATE SCHEMA IF NOT EXISTS {{schema}}")
	for _, role := range []string{"{{keeper", "{{reader", "{{sites", "{{receiver"} {
		out = append(out, fmt.Sprintf("DO $$ BEGIN IF to_regrole(%s:text}}) IS NULL THEN CREATE ROLE %s}}; END IF; END $$", role, role))
	}
	out = append(out,
		"GRANT {{keeper}}, {{receiver}} TO CURRENT_USER",
		"GRANT USAGE ON SCHEMA {{schema}} TO {{keeper}}, {{reader}}, {{sites}}, {{receiver}}",
		"GRANT CREATE ON SCHEMA {{schema}} TO {{receiver}}", // to own its functions; taken back at the end
		"CREATE TABLE IF NOT EXISTS office_steps (step int PRIMARY KEY, at timestamptz NOT NULL DEFAULT now())",
		"GRANT SELECT ON office_steps TO {{keeper}}, {{reader}}, {{sites}}",
	)
	for i := range out {
		out[i] = o.named().Replace(out[i])
	}
	return out
}

// named puts the names of the schema and of its roles into a statement: as identifiers, and with
// ":text" as texts.
func (o *Office) named() *strings.Replacer {
	pairs := []string{"{{schema}}", pgx.Identifier{o.schema}.Sanitize()}
	for _, role := range []string{"keeper", "reader", "sites", "receiver"} {
		name := o.schema + "_" + role
		pairs = append(pairs, "{{"+role+"}}", pgx.Identifier{name}.Sanitize(), "{{"+role+":text}}", "'"+strings.ReplaceAll(name, "'", "''")+"'")
	}
	return strings.NewReplacer(pairs...)
}

// AddSite enters a site, with a role of its own that may sign in. The role has no password: who
// keeps the server gives it one, or a certificate.
func (o *Office) AddSite(ctx context.Context, letters, name string) (headoffice.Site, error) {
	s := headoffice.Site{Letters: letters, Name: strings.TrimSpace(name), Role: o.schema + "_site_" + strings.ToLower(letters)}
	if err := headoffice.CheckLetters(letters); err != nil {
		return s, err
	}
	if s.Name == "" {
		return s, message.Incomplete.Errorf("site %v has no name; type one", letters)
	}
	role := pgx.Identifier{s.Role}.Sanitize()
	err := pgx.BeginFunc(ctx, o.pool, func(tx pgx.Tx) error {
		for _, statement := range []string{
			fmt.Sprintf("DO $$ BEGIN IF to_regrole('%s') IS NULL THEN CREATE ROLE %s LOGIN; END IF; END $$", s.Role, role),
			o.named().Replace("GRANT {{sites}} TO " + role),
		} {
			if _, err := tx.Exec(ctx, statement); err != nil {
				return err
			}
		}
		if _, err := tx.Exec(ctx, "INSERT INTO sites (site, name, role) VALUES ($1, $2, $3)", s.Letters, s.Name, s.Role); err != nil {
			return err
		}
		_, err := tx.Exec(ctx, "INSERT INTO chains (site, branch, letters, seq, hash) VALUES ($1, 1, $1, 0, genesis())", s.Letters)
		return err
	})
	if isTaken(err) {
		return s, message.Refused.Errorf("there is a site with the letters %v or the name %v at this office already. Give the new one others", letters, s.Name)
	}
	return s, sentence(err)
}
