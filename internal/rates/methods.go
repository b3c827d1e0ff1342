package rates

import (
	"tenthpoint/internal/rates/discount"
	"tenthpoint/internal/rates/drying"
	"tenthpoint/internal/rates/handling"
	"tenthpoint/internal/rates/rule"
	"tenthpoint/internal/rates/shrink"
)

// Methods describes every method of a kind of rule, by the name of its table in
// an edition: "shrink", "handling", "drying", "discount".
func Methods(kind string) []rule.Description {
	switch kind {
	case "shrink":
		return rule.Describe(shrink.Methods)
	case "handling":
		return rule.Describe(handling.Methods)
	case "drying":
		return rule.Describe(drying.Methods)
	case "discount":
		return rule.Describe(discount.Forms)
	}
	return nil
}
