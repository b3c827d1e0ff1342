package postgres

import (
	"context"
	_ "embed"
	"encoding/json"

	"github.com/jackc/pgx/v5"

	"tenthpoint/internal/book"
	"tenthpoint/internal/message"
)

// schemaParts are the tables, indexes, triggers and functions as the steps make them: written by a
// test, that holds a new book against it.
//
//go:embed schema.json
var schemaParts []byte

// selectParts describes everything in the schema of a book. The name of the schema is taken out, since
// every book has its own.
const selectParts = `WITH here AS (SELECT current_schema()::regnamespace AS oid, current_schema() || '.' AS dot),
	parts (kind, name, said) AS (
		SELECT 'table', c.relname, string_agg(format('%s %s%s', a.attname, format_type(a.atttypid, a.atttypmod), CASE WHEN a.attnotnull THEN ' NOT NULL' ELSE '' END), ', ' ORDER BY a.attnum)
		  FROM here JOIN pg_class c ON c.relnamespace = here.oid JOIN pg_attribute a ON a.attrelid = c.oid AND a.attnum > 0 AND NOT a.attisdropped
		 WHERE c.relkind IN ('r', 'p', 'v', 'm', 'f') GROUP BY c.relname
		UNION ALL
		SELECT 'index', c.relname, pg_get_indexdef(c.oid) FROM here JOIN pg_class c ON c.relnamespace = here.oid WHERE c.relkind = 'i'
		UNION ALL
		SELECT 'constraint', o.conname, pg_get_constraintdef(o.oid) FROM here JOIN pg_constraint o ON o.connamespace = here.oid WHERE o.contype <> 'n'
		UNION ALL
		SELECT 'trigger', t.tgname, pg_get_triggerdef(t.oid) || CASE t.tgenabled WHEN 'O' THEN '' ELSE ' disabled' END
		  FROM here JOIN pg_class c ON c.relnamespace = here.oid JOIN pg_trigger t ON t.tgrelid = c.oid WHERE NOT t.tgisinternal
		UNION ALL
		SELECT 'rule', r.rulename, pg_get_ruledef(r.oid) FROM here JOIN pg_class c ON c.relnamespace = here.oid JOIN pg_rewrite r ON r.ev_class = c.oid
		UNION ALL
		SELECT 'function', p.proname, pg_get_function_identity_arguments(p.oid) || CASE WHEN p.prosecdef THEN ' as owner ' ELSE ' ' END || p.prosrc
		  FROM here JOIN pg_proc p ON p.pronamespace = here.oid)
	SELECT kind, name, replace(said, dot, '') FROM parts CROSS JOIN here ORDER BY kind, name`

func scanPart(row pgx.Row) (p book.Part, err error) {
	err = row.Scan(&p.Kind, &p.Name, &p.Text)
	return p, err
}

// selectRights lists who may change what, past the function that is there for it.
const selectRights = `SELECT c.relname, coalesce(r.rolname, 'PUBLIC'), string_agg(DISTINCT x.privilege_type, ', ' ORDER BY x.privilege_type)
	FROM pg_class c CROSS JOIN LATERAL aclexplode(c.relacl) x LEFT JOIN pg_roles r ON r.oid = x.grantee
	WHERE c.relnamespace = current_schema()::regnamespace AND x.grantee <> c.relowner AND x.privilege_type <> 'SELECT'
	  AND NOT (c.relname = 'drafts' AND x.privilege_type IN ('INSERT', 'UPDATE', 'DELETE'))
	GROUP BY c.relname, r.rolname ORDER BY c.relname, r.rolname`

func scanRight(row pgx.Row) (message.Text, error) {
	var table, who, what string
	err := row.Scan(&table, &who, &what)
	return message.New("%q may change the table %v past the program: it has the right to %v. Take it away: REVOKE %v ON %v FROM %v.", who, table, what, what, table, who), err
}

// VerifyFile checks that tables, indexes, triggers and functions, some of which forbid altering the
// journal, are exactly those that the program makes, that nobody has a right to get past them, and
// that owners of loads are numbered from 1.
func (b *Book) VerifyFile(ctx context.Context) ([]message.Text, error) {
	from := b.factReader.during(ctx)
	var want []book.Part
	if err := json.Unmarshal(schemaParts, &want); err != nil {
		return nil, err
	}
	is, err := list(from, scanPart, selectParts)
	if err != nil {
		return nil, err
	}
	problems := book.CompareParts(want, is)
	for _, look := range []struct {
		scan  func(pgx.Row) (message.Text, error)
		query string
	}{{scanRight, selectRights}, {scanMisplacedOwners, selectMisplacedOwners}} {
		found, err := list(from, look.scan, look.query)
		if err != nil {
			return problems, err
		}
		problems = append(problems, found...)
	}
	return problems, nil
}

const selectMisplacedOwners = `SELECT load, count(*) FROM owners GROUP BY load HAVING min(place) <> 1 OR max(place) <> count(*) ORDER BY load`

func scanMisplacedOwners(row pgx.Row) (message.Text, error) {
	var load string
	var owners int
	err := row.Scan(&load, &owners)
	return message.New("The owners of load %v are not numbered 1 to %d.", load, owners), err
}
