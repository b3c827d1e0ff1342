package grain

// wheats are the classes of wheat. They differ in their test weight limits
// only; everything else in the table is common to all classes but Mixed, which
// has no place here.
func wheats() []Commodity {
	return []Commodity{
		wheat("wheat-hrw", "Hard Red Winter wheat"),
		wheat("wheat-hrs", "Hard Red Spring wheat"),
		wheat("wheat-srw", "Soft Red Winter wheat"),
		wheat("wheat-white", "White wheat"),
		wheat("wheat-white-club", "White Club wheat"),
		wheat("wheat-durum", "Durum wheat"),
	}
}

func wheat(id, name string) Commodity {
	return Commodity{
		ID: id, Name: name, CanadaKind: "Wheat",
		Factors: sampled(
			moisture(),
			testWeight(),
			dockage(),
			protein(),
			percent(Damage, "Damaged kernels, total"),
			percent(HeatDamage, "Heat-damaged kernels"),
			percent(ForeignMaterial, "Foreign material"),
			percent(ShrunkenBroken, "Shrunken and broken kernels"),
			percent(Defects, "Defects, total"),
			percent(ContrastingClasses, "Contrasting classes"),
			percent(OtherClasses, "Wheat of other classes, total"),
			percent(Stones, "Stones by weight"),
			tally(StoneCount, "Stones in 1 kg"),
			tally(AnimalFilth, "Animal filth in 1 kg"),
			tally(CastorBeans, "Castor beans in 1 kg"),
			tally(Crotalaria, "Crotalaria seeds in 1 kg"),
			tally(Glass, "Pieces of glass in 1 kg"),
			tally(UnknownSubstances, "Pieces of unknown foreign substance in 1 kg"),
			tally(OtherMaterial, "Other material, total, in 1 kg"),
			tally(InsectDamaged, "Insect-damaged kernels in 100 g"),
			percent(Ergot, "Ergot"),
			tally(Garlic, "Green garlic bulblets or equivalent in 1000 g"),
			tally(Smut, "Smut balls in 250 g"),
			present(SmutOdor, "Unmistakable odor of smut"),
		),
	}
}

func barley() Commodity {
	return Commodity{
		ID: "barley", Name: "Barley", CanadaKind: "Barley",
		Factors: sampled(
			moisture(),
			testWeight(),
			dockage(),
			protein(),
			percent(Sound, "Sound barley"),
			percent(Damage, "Damaged kernels"),
			percent(HeatDamage, "Heat-damaged kernels"),
			percent(ForeignMaterial, "Foreign material"),
			percent(Broken, "Broken kernels"),
			percent(Thin, "Thin barley"),
			percent(Plump, "Plump barley"),
			percent(Blight, "Fungus- or mold-damaged kernels"),
			percent(Ergot, "Ergot"),
			tally(Garlic, "Green garlic bulblets in 500 g"),
			percent(Smut, "Smut balls"),
			present(SmuttyAppearance, "Smutty appearance in mass"),
		),
	}
}

func maltingBarley(id, name string) Commodity {
	return Commodity{
		ID: id, Name: name, CanadaKind: "Barley",
		Factors: sampled(
			moisture(),
			testWeight(),
			dockage(),
			protein(),
			percent(MaltingType, "Suitable malting type"),
			percent(Sound, "Sound barley"),
			percent(Damage, "Damaged kernels"),
			percent(WildOats, "Wild oats"),
			percent(ForeignMaterial, "Foreign material"),
			percent(OtherGrains, "Other grains"),
			percent(SkinnedBroken, "Skinned and broken kernels"),
			percent(Thin, "Thin barley"),
			percent(Plump, "Plump barley"),
			percent(Blight, "Fungus- or mold-damaged kernels"),
			percent(Ergot, "Ergot"),
			tally(Garlic, "Green garlic bulblets in 500 g"),
			percent(Smut, "Smut balls"),
			present(SmuttyAppearance, "Smutty appearance in mass"),
		),
	}
}

func oats() Commodity {
	return Commodity{
		ID: "oats", Name: "Oats", CanadaKind: "Oats",
		Factors: sampled(
			moisture(),
			testWeight(),
			percent(Sound, "Sound oats"),
			percent(HeatDamage, "Heat-damaged kernels"),
			percent(ForeignMaterial, "Foreign material"),
			percent(WildOats, "Wild oats"),
			percent(Thin, "Thin oats"),
			percent(Ergot, "Ergot"),
			tally(Garlic, "Green garlic bulblets in 500 g"),
			percent(Smut, "Smut balls"),
			present(SmuttyAppearance, "Smutty appearance in mass"),
			protein(),
		),
	}
}

func rye() Commodity {
	return Commodity{
		ID: "rye", Name: "Rye", CanadaKind: "Rye",
		Factors: sampled(
			moisture(),
			testWeight(),
			dockage(),
			percent(Damage, "Damaged kernels, total"),
			percent(HeatDamage, "Heat-damaged kernels"),
			percent(ForeignMaterial, "Foreign material, total"),
			percent(NotWheat, "Foreign matter other than wheat"),
			percent(Thin, "Thin rye"),
			percent(Ergot, "Ergot"),
			tally(Garlic, "Green garlic bulblets in 1000 g"),
			tally(Smut, "Smut balls in 250 g"),
			present(SmutOdor, "Unmistakable odor of smut"),
			percent(Stones, "Stones by weight"),
			tally(StoneCount, "Stones"),
		),
	}
}

func triticale() Commodity {
	return Commodity{
		ID: "triticale", Name: "Triticale", CanadaKind: "Triticale",
		Factors: sampled(
			moisture(),
			testWeight(),
			dockage(),
			percent(Damage, "Damaged kernels, total"),
			percent(HeatDamage, "Heat-damaged kernels"),
			percent(ForeignMaterial, "Foreign material, total"),
			percent(NotWheatOrRye, "Material other than wheat or rye"),
			percent(ShrunkenBroken, "Shrunken and broken kernels"),
			percent(Defects, "Defects, total"),
		),
	}
}
