// Package keeping is the science of storing grain: the moisture that grain comes to in air of a
// temperature and humidity, the days it keeps, and the air, heat, time and money that cooling and
// drying take.
//
// Published curves and tables are dated data in schedules/keeping, each with its source. Sources
// differ, so every answer names the one it is from, and [Curves] and [Tables] give the others of
// a grain to be shown beside it. What no published cell confirms is not in the data. Everything
// here is advice: nothing is promised and no settlement depends on it.
//
// Amounts are exact fractions. An exponential or logarithm is rounded to 16 decimals on the way,
// in [quantity.Exp] and [quantity.Ln]; the last rounding is to the tenth of a percent or the
// whole day that is shown.
package keeping
