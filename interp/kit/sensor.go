// The sensor of a camera, and the part of it that the picture uses.

package kit

import (
	"fmt"

	"pullscore/interp/format"
	"pullscore/interp/names"
	"pullscore/lang"
)

// sensor reads the size of the sensor, and reports whether it is known.
func (k *Reader) sensor(c *Camera, s *lang.Sensor) (ok bool) {
	if s.Format != nil {
		ok = k.format(c, s.Format)
	} else {
		w, okW := k.Within(s.Width, names.DimLength, 1e-3, 0.3, "a sensor is 1 to 300 mm wide")
		h, okH := k.Within(s.Height, names.DimLength, 1e-3, 0.3, "a sensor is 1 to 300 mm high")
		if ok = okW && okH; ok {
			c.SensorW, c.Height = w, h
		}
	}
	c.Crop = k.Crop
	if s.Crop != nil {
		c.Crop = 0
		shape, known := k.Within(s.Crop, names.DimFactor, 0.2, 10, "a picture is 0.2 to 10 times as wide as high")
		if ok = ok && known; known {
			c.Crop = shape
		}
	}
	return ok
}

// format takes the size of a format by its name.
func (k *Reader) format(c *Camera, written *lang.FormatName) (ok bool) {
	name := lang.Write(written)
	if c.Format, ok = format.Named(name); ok {
		mm := lang.UnitMM.SI() // as if it were written
		c.SensorW, c.Height = c.Format.WidthMM*mm, c.Format.HeightMM*mm
		return true
	}
	if message, detail := format.Ambiguous(name); message != "" {
		k.Fail(written.Range(), "which-format", message, detail)
		return false
	}
	message := fmt.Sprintf("there is no sensor format %s", name)
	if near, found := lang.Nearest(name, format.Names()); found {
		message += fmt.Sprintf("; did you mean %s?", near)
	}
	k.Fail(written.Range(), "unknown-format", message, "pullscore help formats lists them.")
	return false
}

// Scaled returns the camera with a sensor k times as wide and as high.
func (c Camera) Scaled(k float64) Camera {
	c.SensorW, c.Height, c.Format = c.SensorW*k, c.Height*k, format.Format{}
	return c
}

// Picture returns the camera with the part of its sensor that the picture uses in place of
// the whole: the largest part that has the shape of `crop` on the screen. squeeze is how
// many times the lens squeezes the width. Everything that depends on the size of the
// picture takes it from here: criterion, frame, stage and exports.
func (c Camera) Picture(squeeze float64) Camera {
	if c.Crop <= 0 {
		return c
	}
	shape := c.Crop / squeeze
	if c.SensorW/c.Height > shape {
		c.SensorW = c.Height * shape
	} else {
		c.Height = c.SensorW / shape
	}
	return c
}
