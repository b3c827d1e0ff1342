package grain

func corn() Commodity {
	return Commodity{
		ID: "corn", Name: "Corn", CanadaKind: "Corn",
		Bushel:       lbPerBu("56"),
		BushelSource: "Indiana Code 24-6-1-1; Arkansas Code 4-18-331; Minnesota Statutes 239.32; Iowa Code 210.10; North Dakota Century Code 64-01-05",
		Factors: sampled(
			moisture(),
			testWeightTenths(),
			percent(Damage, "Damaged kernels, total"),
			percent(HeatDamage, "Heat-damaged kernels"),
			percent(BrokenCorn, "Broken corn and foreign material"),
			percent(Flint, "Flint corn"),
			percent(Waxy, "Waxy corn"),
			protein(),
		),
	}
}
