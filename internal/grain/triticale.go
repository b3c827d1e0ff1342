package grain

func triticale() Commodity {
	return Commodity{
		ID: "triticale", Name: "Triticale", CanadaKind: "Triticale",
		Bushel:       noBushel(),
		BushelSource: "no law read names one; 52 lb/bu in Canadian statistics",
		Factors: sampled(
			moisture(),
			testWeightTenths(),
			dockageHalves(),
			percent(Damage, "Damaged kernels, total"),
			percent(HeatDamage, "Heat-damaged kernels"),
			percent(ForeignMaterial, "Foreign material, total"),
			percent(NotWheatOrRye, "Material other than wheat or rye"),
			percent(ShrunkenBroken, "Shrunken and broken kernels"),
			percent(Defects, "Defects, total"),
		),
	}
}
