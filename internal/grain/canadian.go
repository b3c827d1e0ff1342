package grain

// canadianGrains have no United States grade table here; they are received by
// moisture class, dockage and damage.
func canadianGrains() []Commodity {
	return []Commodity{
		canadian("peas", "Peas"),
		canadian("lentils", "Lentils"),
		canadian("beans", "Beans"),
		canadian("faba-beans", "Faba beans"),
		canadian("chickpeas", "Chickpeas"),
		canadian("mustard", "Domestic mustard seed"),
		canadian("rapeseed", "Rapeseed"),
		canadian("buckwheat", "Buckwheat"),
		canadian("safflower", "Safflower seed"),
		canadian("canary-seed", "Canary seed"),
		canadian("mixed-grain", "Mixed grain"),
	}
}

func canadian(id, name string) Commodity {
	return Commodity{
		ID: id, Name: name, CanadaKind: name,
		Factors: sampled(
			moisture(),
			testWeight(),
			dockage(),
			percent(Damage, "Damaged"),
			percent(HeatDamage, "Heat-damaged"),
			percent(ForeignMaterial, "Foreign material"),
			percent(Splits, "Splits"),
			percent(Ergot, "Ergot"),
			percent(Stones, "Stones"),
		),
	}
}
