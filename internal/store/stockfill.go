package store

import (
	"database/sql"
	"errors"

	"tenthpoint/internal/quantity"
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
		if _, err := tx.Exec(putStock, r.values()...); err != nil {
			return err
		}
	}
	return nil
}

// sumStock adds up the position of every day from the loads' rows.
func sumStock(rows *sql.Rows) (all []StockRow, err error) {
	defer func() { err = errors.Join(err, rows.Close()) }()
	days := map[stockKey]map[string]*StockRow{}
	for rows.Next() {
		var r LoadRow
		if err := scanMoved(rows, &r); err != nil {
			return nil, err
		}
		moves, err := r.moved()
		if err != nil {
			return nil, err
		}
		for _, m := range moves {
			day := stockDay(days, m)
			day.In, day.Out, day.Back = day.In.Add(m.in), day.Out.Add(m.out), day.Back.Add(m.back)
		}
	}
	for _, byDay := range days {
		for _, r := range byDay {
			if !r.isNothing() {
				all = append(all, *r)
			}
		}
	}
	sortStock(all)
	return balanced(all), rows.Err()
}

func stockDay(days map[stockKey]map[string]*StockRow, m stockMove) *StockRow {
	if days[m.key] == nil {
		days[m.key] = map[string]*StockRow{}
	}
	if days[m.key][m.day] == nil {
		none := quantity.Zero(m.key.unit)
		days[m.key][m.day] = &StockRow{Commodity: m.key.commodity, Bin: m.key.bin, Day: m.day, In: none, Out: none, Back: none, Weight: none}
	}
	return days[m.key][m.day]
}

// balanced runs the balance down the days of each key.
func balanced(rows []StockRow) []StockRow {
	for i := range rows {
		r := &rows[i]
		if i > 0 && rows[i-1].Commodity == r.Commodity && rows[i-1].Bin == r.Bin && rows[i-1].Weight.Unit() == r.Weight.Unit() {
			r.Weight = rows[i-1].Weight
		}
		r.Weight = r.Weight.Add(r.In).Sub(r.Out).Sub(r.Back)
	}
	return rows
}
