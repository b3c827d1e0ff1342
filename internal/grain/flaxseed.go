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
		Grades: flaxseedGrades(),
	}
}

func flaxseedGrades() *GradeTable {
	return &GradeTable{
		Names:     numbered(2),
		Below:     sampleGrade,
		Source:    "7 CFR 810.604",
		NotJudged: countsNotRead,
		Limits: []Limit{
			leastLbPerBu("49.0 47.0"),
			mostPercent(HeatDamage, "0.2 0.5"),
			mostPercent(Damage, "10.0 15.0"),
		},
		Wholes: []Whole{
			includes(Damage, HeatDamage),
		},
	}
}
