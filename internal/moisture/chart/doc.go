// Package chart reads the conversion charts of dial moisture meters and looks
// moistures up in them.
//
// A dial meter does not read moisture. It reads the capacitance of a charge of grain, which depends
// on water, on temperature, on the mass of grain in the cell and on the kind of grain. A [Chart] is
// the maker's calibration for one crop, one sample mass and one calibration: rows of dial readings,
// columns of sample temperatures. Between its cells the moisture is interpolated linearly both
// ways; outside its edges a reading is refused. The temperature is already in the chart, so it is
// never corrected for twice.
package chart
