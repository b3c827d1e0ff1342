package grain

func soybeans() Commodity {
	return Commodity{
		ID: "soybeans", Name: "Soybeans", CanadaKind: "Soybeans",
		Bushel:       lbPerBu("60"),
		BushelSource: "Indiana Code 24-6-1-1",
		Factors: sampled(
			moisture(),
			testWeightTenths(),
			percent(Damage, "Damaged kernels, total"),
			percent(HeatDamage, "Heat-damaged kernels"),
			percent(ForeignMaterial, "Foreign material"),
			percent(Splits, "Splits"),
			percent(OtherColors, "Soybeans of other colors"),
			protein(),
			percent(Stones, "Stones by weight"),
			tally(StoneCount, "Stones"),
			tally(AnimalFilth, "Animal filth"),
			tally(CastorBeans, "Castor beans"),
			tally(Crotalaria, "Crotalaria seeds"),
			tally(Glass, "Pieces of glass"),
			tally(UnknownSubstances, "Pieces of unknown foreign substance"),
			tally(OtherMaterial, "Other material, total"),
			tally(Garlic, "Green garlic bulblets in 1000 g"),
		),
	}
}
