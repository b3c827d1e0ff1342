package grain

func corn() Commodity {
	return Commodity{
		ID: "corn", Name: "Corn", CanadaKind: "Corn",
		Factors: sampled(
			moisture(),
			testWeight(),
			percent(Damage, "Damaged kernels, total"),
			percent(HeatDamage, "Heat-damaged kernels"),
			percent(BrokenCorn, "Broken corn and foreign material"),
			percent(Flint, "Flint corn"),
			percent(Waxy, "Waxy corn"),
			protein(),
			percent(Stones, "Stones by weight"),
			tally(CastorBeans, "Castor beans"),
			tally(Crotalaria, "Crotalaria seeds"),
			tally(Glass, "Pieces of glass"),
			tally(UnknownSubstances, "Pieces of unknown foreign substance"),
			tally(Cockleburs, "Cockleburs"),
			percent(Filth, "Animal filth by weight"),
			present(LowQuality, "Distinctly low quality"),
		),
	}
}

func sorghum() Commodity {
	return Commodity{
		ID: "sorghum", Name: "Sorghum",
		Factors: sampled(
			moisture(),
			testWeight(),
			dockage(),
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
			present(Weathered, "Badly weathered"),
		),
	}
}
