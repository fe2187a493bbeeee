package inwords

import "math"

func CeilTo(v, perUnit float64) float64 { return math.Ceil(v*perUnit-1e-6) / perUnit }
