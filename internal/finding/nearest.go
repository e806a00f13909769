package finding

// Nearest returns the name that word was probably meant to be, or "" when none is
// close: the smallest edit distance, ties going to the earlier name, and never more
// than a third of the word.
func Nearest(word string, names []string) string {
	w := []rune(word)
	best, most := "", max(1, len(w)/3)
	for _, n := range names {
		if d := distance(w, []rune(n)); d <= most {
			best, most = n, d-1
		}
	}
	return best
}

// distance counts the insertions, deletions and replacements that turn a into b,
// and a swap of two neighbours as one.
func distance(a, b []rune) int {
	before, row, next := make([]int, len(b)+1), make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range a {
		next[0] = i + 1
		for j := range b {
			cost := 1
			if a[i] == b[j] {
				cost = 0
			}
			next[j+1] = min(next[j]+1, row[j+1]+1, row[j]+cost)
			if i > 0 && j > 0 && a[i] == b[j-1] && a[i-1] == b[j] {
				next[j+1] = min(next[j+1], before[j-1]+1)
			}
		}
		before, row, next = row, next, before
	}
	return row[len(b)]
}

// Meant is the start of a mend: it names the nearest name when there is one.
func Meant(word string, names []string) string {
	if n := Nearest(word, names); n != "" {
		return "write " + n + " if that is what was meant; otherwise "
	}
	return ""
}
