package demo

import (
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
)

// growers deliver grain; the landlords, at the end, only share in it. Codes are what a clerk types.
var growers = []elevator.Grower{
	grower("101", "Abner Quist"),
	grower("102", "Beatrix Holloway", part("102", 2, 3), part("901", 1, 3)),
	grower("103", "Cobb Hollow Farm"),
	grower("104", "Delphine Marsh", part("104", 60, 100), part("902", 40, 100)),
	grower("105", "Ezra Winterbourne"),
	grower("106", "Fennimore Brothers"),
	grower("107", "Greta Sundstrom", part("107", 2, 3), part("903", 1, 3)),
	grower("108", "Hollis Pike"),
	grower("109", "Imre Valdasz"),
	grower("110", "Juniper Ridge Farm", part("110", 1, 2), part("904", 1, 2)),
	grower("111", "Kasimir Dole"),
	grower("112", "Lorna Teague"),
	grower("113", "Maeve Oduya", part("113", 50, 100), part("902", 25, 100), part("905", 25, 100)),
	grower("114", "Nils Farrow"),
	grower("115", "Odessa Crane"),
	grower("116", "Percival Loam"),
	grower("117", "Quill Creek Farm", part("117", 2, 3), part("906", 1, 3)),
	grower("118", "Rosalind Amador"),
	grower("119", "Silas Brandt"),
	grower("120", "Thessaly Grange"),
	grower("121", "Ursula Vane", part("121", 67, 100), part("901", 33, 100)),
	grower("122", "Viggo Stark-Hale"),
	grower("123", "Winifred Aske"),
	grower("124", "Zeke Tollander", part("124", 1, 3), part("905", 2, 3)),
}

var landlords = []elevator.Grower{
	grower("901", "Estate of R. Pomfret"),
	grower("902", "Lucinda Vail"),
	grower("903", "Two Culverts Trust"),
	grower("904", "Ambrose Knoll"),
	grower("905", "Section Nine Land"),
	grower("906", "Hester Ferrier"),
}

func grower(code, name string, shares ...elevator.Share) elevator.Grower {
	return elevator.Grower{ID: code, Name: name, Address: "Rural route, Ottermill (invented)", Shares: shares}
}

func part(code string, parts, of int64) elevator.Share {
	return elevator.Share{GrowerID: code, Parts: quantity.Int(parts, quantity.Plain), Of: quantity.Int(of, quantity.Plain)}
}

// names are all growers and landlords by code.
var names = func() map[string]string {
	out := map[string]string{}
	for _, g := range growers {
		out[g.ID] = g.Name
	}
	for _, g := range landlords {
		out[g.ID] = g.Name
	}
	return out
}()

// owners are a grower's usual shares as a load names them.
func owners(g elevator.Grower) []load.Owner {
	var out []load.Owner
	for _, s := range g.Shares {
		out = append(out, load.Owner{Party: load.Party{ID: s.GrowerID, Name: names[s.GrowerID]}, Parts: s.Parts, Of: s.Of})
	}
	return out
}
