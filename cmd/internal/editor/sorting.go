// Sorting with one code for all types.

package editor

import "sort"

// sortStable sorts a list by what compare says of two of its items, and keeps the order of
// those that are equal. The generic functions of package slices make the program 13 kB
// larger for every type that is sorted, and the lists here are short.
func sortStable[T any](list []T, compare func(a, b T) int) {
	sort.SliceStable(list, func(i, j int) bool { return compare(list[i], list[j]) < 0 })
}
