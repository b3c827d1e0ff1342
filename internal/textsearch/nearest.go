package textsearch

// Nearest are the words most like a mistyped text: those that hold it or that few
// letters part from it, the most alike first as they stand; none where nothing is
// alike.
func Nearest(text string, words []string) []string {
	typed := Fold(text)
	if typed == "" || len(typed) > longestTyped {
		return nil
	}
	least, near := len([]rune(typed))/3+1, []string(nil)
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

// Bounds of a suggestion: a longer text is no slip of the finger, and more words
// are no help.
const (
	longestTyped = 60
	mostNear     = 4
)

// distance is how many letters are to be put in, taken out, changed or swapped with
// the next to make one text of the other.
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
