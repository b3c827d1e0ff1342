package grain

// wheats are the classes of wheat. They differ in their test weight limits
// only; everything else in the table is common to all classes but Mixed.
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
		Bushel:       lbPerBu("60"),
		BushelSource: "Indiana Code 24-6-1-1; Arkansas Code 4-18-331; Minnesota Statutes 239.32",
		Factors: sampled(
			moisture(),
			testWeightTenths(),
			dockageTenths(),
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
			hundredths(Ergot, "Ergot"),
			tally(Garlic, "Green garlic bulblets or equivalent in 1000 g"),
			tally(Smut, "Smut balls in 250 g"),
			present(SmutOdor, "Unmistakable odour of smut"),
		),
	}
}
