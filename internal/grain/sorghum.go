package grain

func sorghum() Commodity {
	return Commodity{
		ID: "sorghum", Name: "Sorghum",
		Bushel:       lbPerBu("56"),
		BushelSource: "Indiana Code 24-6-1-1 (kaffir corn); seed weighs otherwise by some state laws",
		Factors: sampled(
			moisture(),
			testWeightTenths(),
			dockageWhole(),
			percent(Damage, "Damaged kernels, total"),
			percent(HeatDamage, "Heat-damaged kernels"),
			percent(BrokenSorghum, "Broken kernels and foreign material, total"),
			percent(ForeignMaterial, "Foreign material"),
			percent(Stones, "Stones by weight"),
			tally(StoneCount, "Stones"),
			tally(AnimalFilth, "Animal filth"),
			tally(CastorBeans, "Castor beans"),
			tally(Crotalaria, "Crotalaria seeds"),
			tally(Glass, "Pieces of glass"),
			tally(UnknownSubstances, "Pieces of unknown foreign substance"),
			tally(Cockleburs, "Cockleburs"),
			tally(OtherMaterial, "Other material, total"),
			tally(Smut, "Smut balls in 100 g"),
			present(SmuttyAppearance, "Smutty appearance in mass"),
		),
	}
}
