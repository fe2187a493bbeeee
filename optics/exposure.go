// Light: stops, neutral density, shutter.

package optics

import "math"

// StopsBetween returns how many stops less light f-number n takes than f-number
// meter: 2 log2(n/meter). It is below 0 if n is the wider one. Both must be above 0
// and exact (see ExactStop); with rounded marks a full stop would be 0.97.
func StopsBetween(n, meter float64) float64 { return 2 * math.Log2(n/meter) }

// NDStops returns the light that a neutral density filter takes away, in stops, by
// the definition of density: density / log10(2). The label of a filter counts 0.3
// for a stop, so a label of 0.9 gives 2.99.
func NDStops(density float64) float64 { return density / math.Log10(2) }

// NDDensity returns the density of a filter that takes away the given stops. It is
// the inverse of NDStops.
func NDDensity(stops float64) float64 { return stops * math.Log10(2) }

// ShutterAngle returns the angle in degrees of a rotary shutter that exposes
// each of fps frames a second for t seconds: 360 fps t.
func ShutterAngle(fps, t float64) float64 { return 360 * fps * t }

// ExposureValue returns EV = log2(N^2/t), in stops, for f-number n and an exposure
// of t seconds. A value one higher means one stop less light.
func ExposureValue(n, t float64) float64 { return math.Log2(n * n / t) }

// TNumber returns the T-number of a lens with f-number n: N / sqrt(transmittance).
// The transmittance is the share of light that the lens lets through, above 0 and
// up to 1.
func TNumber(n, transmittance float64) float64 { return n / math.Sqrt(transmittance) }
