package grain_test

import (
	"fmt"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/quantity"
)

// A load of corn with everything tested but heat damage: the best grade still
// open is named as no more than that, and what is missing with it.
func ExampleCommodity_Grade() {
	corn, _ := grain.ByID("corn")
	g, err := corn.Grade(grain.Observations{
		grain.TestWeight: quantity.Of("53.8", quantity.LbPerBushel),
		grain.Damage:     quantity.Of("2.1", quantity.Percent),
		grain.BrokenCorn: quantity.Of("1.25", quantity.Percent),
	})
	fmt.Println(g, err)
	fmt.Println(g.HeldDown[0])
	fmt.Println(g.Advisory)
	// Output:
	// no better than U.S. No. 3; not tested: Heat-damaged kernels <nil>
	// Test weight 53.8 lb/bu is under 54.0 lb/bu, the least for U.S. No. 2
	// Advice only: an official grade is given only by a licensed inspector.
}

func ExampleClass() {
	class, err := grain.Class("Wheat - Canada Western Red Spring", quantity.Of("14.6", quantity.Percent))
	fmt.Println(class, err)
	// Output:
	// tough (Wheat - Canada Western Red Spring: 14.6 % to 17.0 %) <nil>
}
