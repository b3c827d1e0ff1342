package imports

import (
	"strings"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
)

// column is one a list may have.
type column struct {
	name   string
	needed bool
}

// factorColumn begins the column of a factor: "factor.test-weight".
const factorColumn = "factor."

var columns = map[Kind][]column{
	Growers: {{"code", true}, {"name", true}, {"address", false}, {"phone", false}, {"shares", false}},
	Trucks:  {{"number", true}, {"plate", false}, {"trailer", false}, {"grower", false}, {"tare", false}, {"tare_day", false}},
	Loads: {{"day", true}, {"commodity", true}, {"grower", true}, {"truck", true}, {"gross", true}, {"tare", true}, {"moisture", true},
		{"old_ticket", false}, {"driver", false}, {"bin", false}, {"disposition", false}, {"contract", false}, {"price", false}, {"crop_year", false},
		{"shares", false}, {"whose", false}, {"owner_terms", false}, {"remark", false}},
	Temperatures: {{"bin", true}, {"day", true}, {"readings", true}, {"grain", false}, {"note", false}},
	Openings: {{"what", true}, {"grain", true}, {"quantity", true}, {"lender", false}, {"until", false}, {"bin", false}, {"grower", false}, {"moisture", false}, {"test_weight", false},
		{"since", false}, {"price", false}, {"paper", false}, {"receipt", false}, {"receipt_day", false}},
}

func isKnown(kind Kind, name string) bool {
	for _, c := range columns[kind] {
		if c.name == name {
			return true
		}
	}
	return kind == Loads && isFactorColumn(name)
}

// isFactorColumn reports whether a column names a factor of some grain.
func isFactorColumn(name string) bool {
	id, ok := strings.CutPrefix(name, factorColumn)
	if !ok || grain.FactorID(id) == grain.Moisture {
		return false
	}
	for _, c := range grain.All() {
		if _, tested := c.Factor(grain.FactorID(id)); tested {
			return true
		}
	}
	return false
}

// known are the columns that a list may have.
func known(kind Kind) message.Text {
	var names []any
	for _, c := range columns[kind] {
		names = append(names, message.Own(c.name))
	}
	if kind == Loads {
		names = append(names, message.New("factor.NAME for each factor, such as factor.test-weight"))
	}
	return message.List(", ", names...)
}

// Example is a short list of a kind, with a heading row, for a person to begin
// from. The people in it are invented.
func Example(kind Kind) string { return examples[kind] }

var examples = map[Kind]string{
	Growers: "code,name,address,phone,shares\n" +
		"G1,Ada Field,2 Farm Lane,555-0101,\n" +
		"G2,Len Lord,,,\n" +
		"G3,Bo Renter,,,G3=2/3; G2=1/3\n",
	Trucks: "number,plate,trailer,grower,tare,tare_day\n" +
		"T1,ABC 1,,G1,\"24,300 lb\",2026-08-01\n" +
		"T2,,,,,\n",
	Loads: "day,commodity,grower,truck,gross,tare,moisture,factor.test-weight,bin,disposition,price,old_ticket\n" +
		"2026-09-14,corn,G1,T1,\"52,300\",\"24,300\",18.4,55.0,Pit 1,stored,,A-1042\n",
	Temperatures: "bin,day,readings,note\n" +
		"B1,2026-10-05,52F 54F 61F 55F,cable 1\n" +
		"B1,2026-10-05,51F 53F 57F 54F,cable 2\n" +
		"B2,2026-10-05,11C 12C 12C,\n",
	Openings: "what,bin,grower,grain,quantity,moisture,test_weight,since,price,paper,receipt,receipt_day,lender,until\n" +
		"bin,B1,,corn,\"60,000 lb\",15.2,56.0,2026-09-14,,,,,,\n" +
		"bin,B1,,corn,\"30,000 lb\",14.8,57.0,2026-09-20,,,,,,\n" +
		"stored,,G1,corn,500 bu,,,2026-09-14,,A-1042,,,,\n" +
		"stored,,G2,corn,300 bu,,,2026-09-15,,A-1050,812 negotiable,2026-09-16,,\n" +
		"sold,,G3,corn,200 bu,,,2026-09-20,4.05,A-1061,,,,\n" +
		"water,,,corn,600 lb,,,,,,,,,\n" +
		"company,,,corn,rest,,,,,,,,,\n" +
		"advance,,G1,,\"$1,200.00\",,,2026-09-18,,A-77,,,,\n" +
		"lien,,G3,corn,,,,2026-05-02,,UCC 2026-118,,,Valley Lenders,2027-05-01\n",
}
