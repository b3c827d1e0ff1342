package handbook

import (
	"fmt"
	"regexp"
	"strings"

	"tenthpoint/internal/i18n"
	"tenthpoint/internal/rates"
)

// methodsHere matches a line of a chapter that is replaced with the methods of a kind of rule. Each
// method has its own paragraph, so a new one needs no change here.
var methodsHere = regexp.MustCompile(`(?m)^\{\{methods ([a-z]+)\}\}$`)

// withMethods inserts the methods where a chapter has the marker, a point for each.
func withMethods(language, text string) string {
	return methodsHere.ReplaceAllStringFunc(text, func(line string) string {
		methods := rates.Methods(methodsHere.FindStringSubmatch(line)[1])
		if len(methods) == 0 {
			panic("handbook: " + line + " names no kind of rule")
		}
		points := make([]string, len(methods))
		for i, m := range methods {
			points[i] = fmt.Sprintf("- `%s`: %s", m.ID, i18n.In(language).Whole(m.Explained))
		}
		return strings.Join(points, "\n")
	})
}
