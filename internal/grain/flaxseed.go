package grain

func flaxseed() Commodity {
	return Commodity{
		ID: "flaxseed", Name: "Flaxseed", CanadaKind: "Flaxseed",
		Bushel:       lbPerBu("56"),
		BushelSource: "Indiana Code 24-6-1-1; Arkansas Code 4-18-331; Minnesota Statutes 239.32",
		Factors: sampled(
			moisture(),
			testWeightHalves(),
			dockageWhole(),
			percent(Damage, "Damaged kernels, total"),
			percent(HeatDamage, "Heat-damaged kernels"),
		),
	}
}
