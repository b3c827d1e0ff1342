package spelled

var frenchUnits = []string{
	"zéro", "un", "deux", "trois", "quatre", "cinq", "six", "sept", "huit", "neuf", "dix", "onze", "douze", "treize",
	"quatorze", "quinze", "seize", "dix-sept", "dix-huit", "dix-neuf",
}

var frenchTens = []string{"", "", "vingt", "trente", "quarante", "cinquante", "soixante", "soixante", "quatre-vingt", "quatre-vingt"}

// french is a number in the words of Canada and France. "Vingt" and "cent" take an s where they are
// multiplied and nothing but a noun follows them; "mille" is no noun and never takes one.
func french(n int) string {
	switch {
	case n < 1000:
		return frenchHundreds(n, true)
	case n < 1_000_000:
		return joined(frenchThousands(n/1000), " ", n%1000, french)
	case n < 2_000_000:
		return joined("un million", " ", n%1_000_000, french)
	}
	return joined(french(n/1_000_000)+" millions", " ", n%1_000_000, french)
}

func frenchThousands(n int) string {
	if n == 1 {
		return "mille"
	}
	return frenchHundreds(n, false) + " mille"
}

// frenchHundreds is a number below 1000; last says that no number follows it.
func frenchHundreds(n int, last bool) string {
	hundreds, left := n/100, n%100
	switch {
	case hundreds == 0:
		return frenchBelowHundred(left, last)
	case hundreds == 1:
		return joined("cent", " ", left, func(n int) string { return frenchBelowHundred(n, last) })
	case left == 0 && last:
		return frenchUnits[hundreds] + " cents"
	}
	return joined(frenchUnits[hundreds]+" cent", " ", left, func(n int) string { return frenchBelowHundred(n, last) })
}

// frenchBelowHundred counts 70 and 90 on from 60 and 80; 21 to 71 have "et", 81 and 91 have none.
func frenchBelowHundred(n int, last bool) string {
	tens, left := n/10, n%10
	switch {
	case n < 20:
		return frenchUnits[n]
	case n == 80 && last:
		return "quatre-vingts"
	}
	if tens == 7 || tens == 9 {
		left += 10
	}
	if (left == 1 || left == 11) && tens < 8 {
		return frenchTens[tens] + " et " + frenchUnits[left]
	}
	return joined(frenchTens[tens], "-", left, func(n int) string { return frenchUnits[n] })
}

func dollarFrench(n int) string {
	if n < 2 {
		return " dollar"
	}
	return " dollars"
}
