package spelled

var englishUnits = []string{
	"zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve", "thirteen",
	"fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen",
}

var englishTens = []string{"", "", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"}

func english(n int) string {
	switch {
	case n < 20:
		return englishUnits[n]
	case n < 100:
		return joined(englishTens[n/10], "-", n%10, english)
	case n < 1000:
		return joined(english(n/100)+" hundred", " ", n%100, english)
	case n < 1_000_000:
		return joined(english(n/1000)+" thousand", " ", n%1000, english)
	}
	return joined(english(n/1_000_000)+" million", " ", n%1_000_000, english)
}

// joined puts the words of what is left behind those of the greater part.
func joined(words, by string, left int, speak func(int) string) string {
	if left == 0 {
		return words
	}
	return words + by + speak(left)
}
