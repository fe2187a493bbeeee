package shot

import "slices"

func SortedTimes(list []float64) []float64 {
	slices.Sort(list)
	return slices.Compact(list)
}
