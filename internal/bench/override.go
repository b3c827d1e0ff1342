package bench

import (
	"fmt"
	"slices"
	"strings"
)

// Override is a manager's recorded decision to let a flagged moisture stand.
// Whether By is a manager is for the desk to know.
type Override struct {
	Code   Code   `json:"code"`
	Test   int    `json:"test,string,omitempty"`
	By     string `json:"by"`
	Reason string `json:"reason"`
}

// ApplyOverrides sets the overrides on the flags they are for. Each override
// that cannot stand is answered with a sentence: no such flag, no person, no
// reason, or a flag that nobody may override.
func ApplyOverrides(flags []Flag, overrides []Override) ([]Flag, []error) {
	flags = slices.Clone(flags)
	var faults faults
	for _, o := range overrides {
		i := slices.IndexFunc(flags, func(f Flag) bool { return f.Code == o.Code && f.Test == o.Test })
		switch {
		case i < 0:
			faults.unless(false, "nothing is flagged %s%s, so there is nothing to override; take the override away", o.Code, onTest(o.Test))
		case flags[i].Final:
			faults.unless(false, "%s%s may not be overridden: %s %s", o.Code, onTest(o.Test), flags[i].What, flags[i].Do)
		case strings.TrimSpace(o.By) == "" || strings.TrimSpace(o.Reason) == "":
			faults.unless(false, "the override of %s%s needs the manager's name and a reason; both are printed", o.Code, onTest(o.Test))
		default:
			flags[i].Override = &o
		}
	}
	return flags, faults
}

func onTest(n int) string {
	if n == 0 {
		return ""
	}
	return fmt.Sprintf(" on test %d", n)
}
