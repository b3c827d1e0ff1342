package grain

import "tenthpoint/internal/quantity"

// canadianGrains have no United States grade table here; they are received by
// moisture class, dockage and damage.
func canadianGrains() []Commodity {
	const twoStates = "Indiana Code 24-6-1-1; Minnesota Statutes 239.32"
	const none = "no law read names one"
	return []Commodity{
		canadian("peas", "Peas", lbPerBu("60"), "Arkansas Code 4-18-331; Minnesota Statutes 239.32 (smooth peas)"),
		canadian("lentils", "Lentils", noBushel(), none),
		canadian("beans", "Beans", lbPerBu("60"), twoStates+"; North Dakota Century Code 64-01-05; Iowa Code 210.10 (dried)"),
		canadian("faba-beans", "Faba beans", noBushel(), none+"; 60 lb/bu in Canadian statistics"),
		canadian("chickpeas", "Chickpeas", noBushel(), none),
		canadian("mustard", "Domestic mustard seed", noBushel(), none+"; 50 lb/bu in Canadian statistics"),
		canadian("rapeseed", "Rapeseed", lbPerBu("50"), twoStates),
		canadian("buckwheat", "Buckwheat", noBushel(), "the laws read disagree: Iowa 48, Arkansas 52, Indiana and Minnesota 50, North Dakota 42 lb/bu"),
		canadian("safflower", "Safflower seed", noBushel(), none),
		canadian("canary-seed", "Canary seed", noBushel(), none+"; 50 lb/bu in Canadian statistics"),
		canadian("mixed-grain", "Mixed grain", noBushel(), none),
	}
}

func canadian(id, name string, bushel quantity.Amount, source string) Commodity {
	return Commodity{
		ID: id, Name: name, CanadaKind: name,
		Bushel: bushel, BushelSource: source,
		Factors: sampled(
			moisture(),
			testWeightHalves(),
			dockageByPractice(),
			percent(Damage, "Damaged"),
			percent(HeatDamage, "Heat-damaged"),
			percent(ForeignMaterial, "Foreign material"),
			percent(Splits, "Splits"),
			hundredths(Ergot, "Ergot"),
			hundredths(Stones, "Stones"),
		),
	}
}
