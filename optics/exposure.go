// Light: stops, neutral density, shutter.

package optics

import "math"

// StopsBetween returns by how many stops f-number n takes less light than
// meter: 2 log2(n/meter), below 0 where n is the wider. Both must be above 0
// and exact (see ExactStop), or a full stop comes out as 0.97.
func StopsBetween(n, meter float64) float64 { return 2 * math.Log2(n/meter) }

// NDStops returns the stops that a neutral density filter takes, by the
// definition of density: density / log10(2). A filter's label counts 0.3 a
// stop, so a label of 0.9 gives 2.99.
func NDStops(density float64) float64 { return density / math.Log10(2) }

// NDDensity returns the density that takes the given stops: it undoes NDStops.
func NDDensity(stops float64) float64 { return stops * math.Log10(2) }

// ShutterAngle returns the angle in degrees of a rotary shutter that exposes
// each of fps frames a second for t seconds: 360 fps t.
func ShutterAngle(fps, t float64) float64 { return 360 * fps * t }

// ExposureValue returns EV = log2(N^2/t) for f-number n and an exposure of t
// seconds; one more is one stop less light.
func ExposureValue(n, t float64) float64 { return math.Log2(n * n / t) }

// TNumber returns the T-number of a lens that lets through the part
// transmittance, above 0 and up to 1, of its light: N / sqrt(transmittance).
func TNumber(n, transmittance float64) float64 { return n / math.Sqrt(transmittance) }
