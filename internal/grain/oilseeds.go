package grain

func soybeans() Commodity {
	return Commodity{
		ID: "soybeans", Name: "Soybeans", CanadaKind: "Soybeans",
		Factors: sampled(
			moisture(),
			testWeight(),
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
			present(PurpleStain, "Purple mottled or stained beyond the line photograph"),
		),
	}
}

func canola() Commodity {
	return Commodity{
		ID: "canola", Name: "Canola", CanadaKind: "Canola",
		Factors: sampled(
			moisture(),
			testWeight(),
			dockage(),
			percent(Damage, "Damaged kernels, total"),
			percent(HeatDamage, "Heat-damaged"),
			percent(Green, "Distinctly green"),
			percent(Conspicuous, "Conspicuous admixture, total"),
			percent(Inconspicuous, "Inconspicuous admixture"),
			percent(Ergot, "Ergot"),
			percent(Sclerotinia, "Sclerotinia"),
			percent(Stones, "Stones"),
			tally(AnimalFilth, "Animal filth"),
			tally(Glass, "Pieces of glass"),
			tally(UnknownSubstances, "Pieces of unknown foreign substance"),
			tally(Garlic, "Green garlic bulblets in 500 g"),
		),
	}
}

func flaxseed() Commodity {
	return Commodity{
		ID: "flaxseed", Name: "Flaxseed", CanadaKind: "Flaxseed",
		Factors: sampled(
			moisture(),
			testWeight(),
			dockage(),
			percent(Damage, "Damaged kernels, total"),
			percent(HeatDamage, "Heat-damaged kernels"),
			percent(Stones, "Stones by weight"),
			tally(StoneCount, "Stones"),
			tally(AnimalFilth, "Animal filth"),
		),
	}
}

func sunflower() Commodity {
	return Commodity{
		ID: "sunflower", Name: "Sunflower seed", CanadaKind: "Sunflower seed",
		Factors: sampled(
			moisture(),
			testWeight(),
			percent(Damage, "Damaged seed, total"),
			percent(HeatDamage, "Heat-damaged seed"),
			percent(Dehulled, "Dehulled seed"),
			percent(ForeignMaterial, "Foreign material"),
		),
	}
}
