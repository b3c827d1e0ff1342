package sqlite

import (
	"database/sql"
	"errors"
	"tenthpoint/internal/book"
)

// fills are what a migration leaves to the program, by the migration's name:
// SQL cannot add decimals that are text. Each runs in the migration's own
// transaction.
var fills = map[string]func(*sql.Tx) error{
	"0003_stock.sql": fillStock,
}

// fillStock works the position of an older book out of its loads.
func fillStock(tx *sql.Tx) error {
	rows, err := tx.Query(selectMoved + " WHERE ticket IS NOT NULL")
	if err != nil {
		return err
	}
	all, err := sumStock(rows)
	if err != nil {
		return err
	}
	for _, r := range all {
		if _, err := tx.Exec(putStock, stockValues(r)...); err != nil {
			return err
		}
	}
	return nil
}

// sumStock adds up the position of every day from the loads' rows.
func sumStock(rows *sql.Rows) (all []book.StockRow, err error) {
	defer func() { err = errors.Join(err, rows.Close()) }()
	var sum book.StockSum
	for rows.Next() {
		var r book.LoadRow
		if err := scanMoved(rows, &r); err != nil {
			return nil, err
		}
		if err := sum.Add(r); err != nil {
			return nil, err
		}
	}
	return sum.Rows(), rows.Err()
}
