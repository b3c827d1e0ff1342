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
		Grades: triticaleGrades(),
		Special: []SpecialGrade{
			infestedBreadGrain(),
		},
	}
}

func triticaleGrades() *GradeTable {
	return &GradeTable{
		Names:     numbered(4),
		Below:     sampleGrade,
		Source:    "7 CFR 810.2004",
		NotJudged: countsNotRead,
		Limits: []Limit{
			leastLbPerBu("48.0 45.0 43.0 41.0"),
			mostPercent(HeatDamage, "0.2 0.2 0.5 3.0"),
			mostPercent(Damage, "2.0 4.0 8.0 15.0"),
			mostPercent(NotWheatOrRye, "1.0 2.0 3.0 4.0"),
			mostPercent(ForeignMaterial, "2.0 4.0 7.0 10.0"),
			mostPercent(ShrunkenBroken, "5.0 8.0 12.0 20.0"),
			mostPercent(Defects, "5.0 8.0 12.0 20.0"),
		},
		Wholes: []Whole{
			includes(Damage, HeatDamage),
			includes(ForeignMaterial, NotWheatOrRye),
			includes(Defects, Damage, ForeignMaterial, ShrunkenBroken),
		},
	}
}
