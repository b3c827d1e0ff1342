package grain

const barleyBushel = "Indiana Code 24-6-1-1; Arkansas Code 4-18-331; Minnesota Statutes 239.32; Iowa Code 210.10; North Dakota Century Code 64-01-05"

func barley() Commodity {
	return Commodity{
		ID: "barley", Name: "Barley", CanadaKind: "Barley",
		Bushel: lbPerBu("48"), BushelSource: barleyBushel,
		Factors: sampled(
			moisture(),
			testWeightHalves(),
			dockageHalves(),
			protein(),
			percent(Sound, "Sound barley"),
			percent(Damage, "Damaged kernels"),
			percent(HeatDamage, "Heat-damaged kernels"),
			percent(ForeignMaterial, "Foreign material"),
			percent(Broken, "Broken kernels"),
			percent(Thin, "Thin barley"),
			percent(Plump, "Plump barley"),
			percent(Blight, "Fungus- or mold-damaged kernels"),
			hundredths(Ergot, "Ergot"),
			tally(Garlic, "Green garlic bulblets in 500 g"),
			hundredths(Smut, "Smut balls"),
			present(SmuttyAppearance, "Smutty appearance in mass"),
		),
	}
}
