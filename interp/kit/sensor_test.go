package kit

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestPicture(t *testing.T) {
	for _, test := range []struct {
		w, h, crop, squeeze float64 // of the sensor, mm
		wantW, wantH        float64
	}{
		{24.89, 18.66, 0, 1, 24.89, 18.66},
		{24.89, 18.66, 2.39, 1, 24.89, 24.89 / 2.39},
		{24.89, 9.35, 1.85, 1, 9.35 * 1.85, 9.35},
		{21.95, 18.59, 2.39, 2, 21.95, 21.95 * 2 / 2.39},
		{36, 24, 2.39, 2, 24 * 2.39 / 2, 24},
	} {
		got := Camera{SensorW: test.w, Height: test.h, Crop: test.crop}.Picture(test.squeeze)
		if math.Abs(got.SensorW-test.wantW) > 1e-12 || math.Abs(got.Height-test.wantH) > 1e-12 {
			t.Errorf("%+v: %v x %v", test, got.SensorW, got.Height)
		}
	}
}

// The picture has its shape on the screen, lies within the sensor and touches two of its
// sides.
func TestPictureIsTheLargest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := Camera{
			SensorW: rapid.Float64Range(4, 60).Draw(t, "width"), Height: rapid.Float64Range(3, 40).Draw(t, "height"),
			Crop: rapid.Float64Range(0.2, 10).Draw(t, "crop"),
		}
		squeeze := rapid.Float64Range(1, 2).Draw(t, "squeeze")
		p := c.Picture(squeeze)
		const near = 1e-9
		if math.Abs(p.SensorW*squeeze/p.Height-c.Crop) > near*c.Crop {
			t.Fatalf("its shape is %v", p.SensorW*squeeze/p.Height)
		}
		if p.SensorW > c.SensorW*(1+near) || p.Height > c.Height*(1+near) {
			t.Fatalf("%v x %v is larger than the sensor", p.SensorW, p.Height)
		}
		if math.Abs(p.SensorW-c.SensorW) > near*c.SensorW && math.Abs(p.Height-c.Height) > near*c.Height {
			t.Fatalf("%v x %v could be larger", p.SensorW, p.Height)
		}
	})
}
