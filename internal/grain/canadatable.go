package grain

// Where the moisture classes were read, by schedule.
const (
	offGrades   = "Off Grades of Grain and Grades of Screenings Order, C.R.C. c. 890, "
	asAmended   = " (as amended 2025-08-01, SOR/2025-153)"
	scheduleI   = offGrades + "Sched. I" + asAmended
	scheduleII  = offGrades + "Sched. II" + asAmended
	scheduleIII = offGrades + "Sched. III" + asAmended
)

// moistureClasses are the grains of the order with the highest moisture of
// each class that has one: straight, tough, damp, moist. The class after the
// last is open upwards.
var moistureClasses = []moistureRow{
	{"Sunflower seed", "9.5 13.5 17.0 22.0", scheduleI},
	{"Domestic mustard seed", "9.5 12.5", scheduleI},
	{"Peas", "16.0 18.0", scheduleI},
	{"Rapeseed", "10.0 12.5", scheduleI},
	{"Buckwheat", "16.0 18.0", scheduleI},
	{"Beans", "18.0 -", scheduleI},
	{"Soybeans", "14.0 16.0 18.0 20.0", scheduleI},
	{"Lentils", "14.0 16.0", scheduleI},
	{"Faba beans", "16.0 18.0", scheduleI},
	{"Triticale", "14.0 17.0", scheduleI},
	{"Canola", "10.0 12.5", scheduleI},
	{"Safflower seed", "9.5 13.5 17.0 22.0", scheduleI},
	{"Canary seed", "13.0 17.0", scheduleI},
	{"Wheat - Canada Prairie Spring Red", "14.5 17.0", scheduleI},
	{"Wheat - Canada Prairie Spring White", "14.5 17.0", scheduleI},
	{"Wheat - Canada Northern Hard Red", "14.5 17.0", scheduleI},
	{"Wheat - Canada Western Red Spring", "14.5 17.0", scheduleII},
	{"Wheat - Canada Western Hard White Spring", "14.5 17.0", scheduleII},
	{"Wheat - Canada Western Amber Durum", "14.5 17.0", scheduleII},
	{"Wheat - Canada Western Red Winter", "14.5 17.0", scheduleII},
	{"Wheat - Canada Western Soft White Spring", "14.5 17.0", scheduleII},
	{"Wheat - Canada Western Extra Strong", "14.5 17.0", scheduleII},
	{"Wheat - Canada Western Special Purpose", "14.5 17.0", scheduleII},
	{"Oats - Canada Western", "13.5 17.0", scheduleII},
	{"Barley - Canada Western Malting", "13.5 17.0", scheduleII},
	{"Barley - Canada Western Food (covered, two-row and six-row)", "13.5 17.0", scheduleII},
	{"Barley - Canada Western Food Hulless (two-row and six-row)", "14.0 17.0", scheduleII},
	{"Barley - Canada Western General Purpose", "14.8 17.0", scheduleII},
	{"Rye - Canada Western", "14.0 17.0", scheduleII},
	{"Mixed grain CW - Wheat", "14.5 17.0", scheduleII},
	{"Mixed grain CW - Rye", "14.0 17.0", scheduleII},
	{"Mixed grain CW - Barley", "14.8 17.0", scheduleII},
	{"Mixed grain CW - Oats", "13.5 17.0", scheduleII},
	{"Mixed grain CW - Triticale", "14.0 17.0", scheduleII},
	{"Mixed grain CW (unspecified)", "14.5 17.0", scheduleII},
	{"Flaxseed - Canada Western", "10.0 13.5", scheduleII},
	{"Corn - Canada Western Yellow/White/Mixed", "15.5 17.5 21.0 25.0", scheduleII},
	{"Chickpeas - Canada Western Desi", "14.0 16.0", scheduleII},
	{"Chickpeas - Canada Western Kabuli", "14.0 16.0", scheduleII},
	{"Wheat - Canada Eastern Red Spring", "14.5 17.0", scheduleIII},
	{"Wheat - Canada Eastern Hard Red Winter", "14.5 17.0", scheduleIII},
	{"Wheat - Canada Eastern Soft Red Winter", "14.5 17.0", scheduleIII},
	{"Wheat - Canada Eastern Amber Durum", "14.5 17.0", scheduleIII},
	{"Wheat - Canada Eastern White Winter", "14.5 17.0", scheduleIII},
	{"Wheat - Canada Eastern Other Wheat", "14.5 17.0", scheduleIII},
	{"Wheat - Canada Eastern Feed", "14.5 17.0", scheduleIII},
	{"Oats - Canada Eastern", "13.5 17.0", scheduleIII},
	{"Barley - Canada Eastern Malting", "13.5 17.0", scheduleIII},
	{"Barley - Canada Eastern Food (covered, two-row and six-row)", "13.5 17.0", scheduleIII},
	{"Barley - Canada Eastern Food Hulless (two-row and six-row)", "14.0 17.0", scheduleIII},
	{"Barley - Canada Eastern General Purpose", "14.8 17.0", scheduleIII},
	{"Rye - Canada Eastern", "14.0 17.0", scheduleIII},
	{"Mixed grain CE - Wheat", "14.5 17.0", scheduleIII},
	{"Mixed grain CE - Rye", "14.0 17.0", scheduleIII},
	{"Mixed grain CE - Barley", "14.8 17.0", scheduleIII},
	{"Mixed grain CE - Oats", "13.5 17.0", scheduleIII},
	{"Mixed grain CE - Triticale", "14.0 17.0", scheduleIII},
	{"Mixed grain CE (unspecified)", "14.5 17.0", scheduleIII},
	{"Flaxseed - Canada Eastern", "10.0 13.5", scheduleIII},
	{"Corn - Canada Eastern Yellow/White/Mixed", "15.5 17.5 21.0 25.0", scheduleIII},
}
