package grain

func canola() Commodity {
	return Commodity{
		ID: "canola", Name: "Canola", CanadaKind: "Canola",
		Bushel:       lbPerBu("50"),
		BushelSource: "Indiana Code 24-6-1-1 and Minnesota Statutes 239.32, both for rapeseed",
		Factors: sampled(
			moisture(),
			testWeightHalves(),
			dockageByPractice(),
			percent(Damage, "Damaged kernels, total"),
			percent(HeatDamage, "Heat-damaged"),
			percent(Green, "Distinctly green"),
			percent(Conspicuous, "Conspicuous admixture, total"),
			percent(Inconspicuous, "Inconspicuous admixture"),
			hundredths(Ergot, "Ergot"),
			hundredths(Sclerotinia, "Sclerotinia"),
			hundredths(Stones, "Stones"),
			tally(AnimalFilth, "Animal filth"),
			tally(Glass, "Pieces of glass"),
			tally(UnknownSubstances, "Pieces of unknown foreign substance"),
			tally(Garlic, "Green garlic bulblets in 500 g"),
		),
	}
}
