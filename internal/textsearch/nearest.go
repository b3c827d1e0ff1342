package textsearch

// Nearest returns the words most like a mistyped text: those that contain it or are within a few
// edits, the most alike first, otherwise in the given order; none where nothing is alike.
func Nearest(text string, words []string) []string {
	typed := Fold(text)
	letters := len([]rune(typed))
	if letters < shortestTyped || letters > longestTyped {
		return nil
	}
	least, near := max(1, letters/4), []string(nil)
	for _, word := range words {
		far := distance(typed, Fold(word))
		if Contains(word, text) {
			far = 0
		}
		switch {
		case far > least:
		case far < least:
			least, near = far, []string{word}
		default:
			near = append(near, word)
		}
	}
	return near[:min(len(near), mostNear)]
}

// Limits of a suggestion: any code of two letters is like any other, a longer text is no typing
// error, and more words are no help.
const (
	shortestTyped = 3
	longestTyped  = 60
	mostNear      = 4
)

// distance is the Damerau-Levenshtein distance: the number of letters to insert, delete, change or
// swap with the next to turn one text into the other.
func distance(a, b string) int {
	from, to := []rune(a), []rune(b)
	before, last, row := []int(nil), make([]int, len(to)+1), make([]int, len(to)+1)
	for j := range last {
		last[j] = j
	}
	for i := 1; i <= len(from); i++ {
		row[0] = i
		for j := 1; j <= len(to); j++ {
			changed := last[j-1]
			if from[i-1] != to[j-1] {
				changed++
			}
			row[j] = min(changed, last[j]+1, row[j-1]+1)
			if i > 1 && j > 1 && from[i-1] == to[j-2] && from[i-2] == to[j-1] {
				row[j] = min(row[j], before[j-2]+1)
			}
		}
		before, last, row = last, row, make([]int, len(to)+1)
	}
	return last[len(to)]
}
