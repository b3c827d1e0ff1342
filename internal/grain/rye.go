package grain

func rye() Commodity {
	return Commodity{
		ID: "rye", Name: "Rye", CanadaKind: "Rye",
		Bushel:       lbPerBu("56"),
		BushelSource: "Indiana Code 24-6-1-1; Arkansas Code 4-18-331; Minnesota Statutes 239.32",
		Factors: sampled(
			moisture(),
			testWeightTenths(),
			dockageTenths(),
			percent(Damage, "Damaged kernels, total"),
			percent(HeatDamage, "Heat-damaged kernels"),
			percent(ForeignMaterial, "Foreign material, total"),
			percent(NotWheat, "Foreign matter other than wheat"),
			percent(Thin, "Thin rye"),
			hundredths(Ergot, "Ergot"),
			tally(Garlic, "Green garlic bulblets in 1000 g"),
			tally(Smut, "Smut balls in 250 g"),
			present(SmutOdor, "Unmistakable odour of smut"),
		),
	}
}
