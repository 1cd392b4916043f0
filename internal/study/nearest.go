package study

// nearest is the known text with the fewest letters to change.
func nearest(text string, known []string) string {
	best, fewest := "", len(text)+1000
	for _, one := range known {
		if d := lettersToChange(text, one); d < fewest {
			best, fewest = one, d
		}
	}
	return best
}

// lettersToChange is the distance of Levenshtein 1966.
func lettersToChange(a, b string) int {
	from, to := []rune(a), []rune(b)
	row := make([]int, len(to)+1)
	for j := range row {
		row[j] = j
	}
	for i := range from {
		diagonal := row[0]
		row[0] = i + 1
		for j := range to {
			cost := diagonal
			if from[i] != to[j] {
				cost++
			}
			diagonal = row[j+1]
			row[j+1] = min(cost, row[j]+1, row[j+1]+1)
		}
	}
	return row[len(to)]
}
