package grain

func sunflower() Commodity {
	return Commodity{
		ID: "sunflower", Name: "Sunflower seed", CanadaKind: "Sunflower seed",
		Bushel:       noBushel(),
		BushelSource: "no law read names one; 30 lb/bu in Canadian statistics",
		Factors: sampled(
			moisture(),
			testWeightHalves(),
			percent(Damage, "Damaged seed, total"),
			percent(HeatDamage, "Heat-damaged seed"),
			percent(Dehulled, "Dehulled seed"),
			percent(ForeignMaterial, "Foreign material"),
		),
	}
}
