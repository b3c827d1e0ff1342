package across_test

import (
	"testing"

	"tenthpoint/internal/daysheet"
	"tenthpoint/internal/headoffice/across"
	"tenthpoint/internal/position"
	"tenthpoint/internal/quantity"
)

// record is a position of corn in pounds: in the house, of depositors, of the company.
func record(commodity string, inHouse, owed, company int64) position.Record {
	return position.Record{
		Commodity: commodity, Unit: quantity.Lb, Total: position.InBin{InHouse: lb(inHouse)},
		Lines: []position.OfLine{{Line: position.Storage, Close: lb(owed)}, {Line: position.Sold, Close: lb(company)}},
	}
}

func TestWhoseGrainLiesAtAllSites(t *testing.T) {
	var o across.Owners
	o.Add("KH", []position.Record{record("corn", 1000, 600, 400), record("soybeans", 50, 50, 0)})
	o.Add("ELM", []position.Record{record("corn", 500, 700, -300)})
	if rows := o.Rows(); len(rows) != 3 || rows[0].Site != "ELM" || rows[0].Off.Cmp(lb(100)) != 0 {
		t.Errorf("rows %+v", rows)
	}
	total := o.Totals()
	if len(total) != 2 || total[0].InHouse.Cmp(lb(1500)) != 0 || total[0].Owed.Cmp(lb(1300)) != 0 || total[0].Company.Cmp(lb(100)) != 0 || total[0].Off.Cmp(lb(100)) != 0 {
		t.Errorf("totals %+v", total)
	}
}

func TestAnAccountAtSeveralSites(t *testing.T) {
	part := func(loads int, bu, usd, later int64) daysheet.AccountPart {
		p := daysheet.AccountPart{Commodity: "corn", Name: "Corn"}
		p.Sum.Loads, p.Sum.Quantity, p.Sum.Payable, p.Sum.LaterQuantity = loads, quantity.Int(bu, quantity.Bushel), quantity.Int(usd, quantity.Dollar), quantity.Int(later, quantity.Bushel)
		return p
	}
	var a across.Account
	a.Add("KH", daysheet.Account{Parts: []daysheet.AccountPart{part(3, 900, 4000, 10)}})
	a.Add("ELM", daysheet.Account{Parts: []daysheet.AccountPart{part(1, 300, 1500, 0)}})
	total := a.Totals()
	if len(total) != 1 || total[0].Loads != 4 || total[0].Quantity.Cmp(quantity.Int(1200, quantity.Bushel)) != 0 || total[0].Payable.Cmp(quantity.Int(5500, quantity.Dollar)) != 0 || total[0].Later.Cmp(quantity.Int(10, quantity.Bushel)) != 0 {
		t.Errorf("totals %+v", total)
	}
}
