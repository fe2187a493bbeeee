package inwords

import "math"

func FloorTo(v, perUnit float64) float64 { return math.Floor(v*perUnit+1e-6) / perUnit }
