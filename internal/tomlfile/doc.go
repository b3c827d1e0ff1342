// Package tomlfile reads the files an elevator keeps its rules in: rate
// editions and moisture charts.
//
// Such a file is read by managers and quoted to growers, so a mistake in it must be found when it
// is loaded, not when a truck is on the scale, and every mistake must be found at once. A [Table]
// returns typed values by key and adds a [Problem] for each key that is missing, unknown, without
// its unit, or a bare number where a quoted decimal belongs (a bare 15.5 would become a binary
// fraction before anyone could stop it). The caller reads everything and checks the problems once,
// at the end.
package tomlfile
