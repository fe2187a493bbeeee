// Which word of a line is which word of the other: the alignment with the fewest words
// to change, bring in or leave out.

package coverage

// align returns for each of some words the index of the word of others that it is, -1
// where it is none of them. A word that was changed counts as the one in its place. The
// indices rise.
func align(words, others []string) []int {
	rows, cols := len(words)+1, len(others)+1
	cost := make([]int, rows*cols)
	for i := range rows {
		for k := range cols {
			switch {
			case i == 0 || k == 0:
				cost[i*cols+k] = i + k
			default:
				change := cost[(i-1)*cols+k-1]
				if words[i-1] != others[k-1] {
					change++
				}
				cost[i*cols+k] = min(change, cost[(i-1)*cols+k]+1, cost[i*cols+k-1]+1)
			}
		}
	}
	at := make([]int, len(words))
	for i, k := rows-1, cols-1; i > 0; {
		here := cost[i*cols+k]
		same := k > 0 && words[i-1] == others[k-1]
		switch {
		case k > 0 && (same && cost[(i-1)*cols+k-1] == here || !same && cost[(i-1)*cols+k-1]+1 == here):
			i, k = i-1, k-1
			at[i] = k
		case cost[(i-1)*cols+k]+1 == here:
			i--
			at[i] = -1
		default:
			k--
		}
	}
	return at
}
