// The statements of a camera.

package foreign

import (
	"fmt"

	"pullscore/interp/units"
)

// cameraName names a camera by what the samples say of it.
func (t *track) cameraName() string {
	if label := clean(t.camera.Label); label != "" {
		return named(label, "")
	}
	return named(t.camera.Make+" "+t.camera.Model, "A")
}

// writeCamera writes the section of the camera.
func (t *track) writeCamera(p *page) {
	c := &t.camera
	p.head("camera "+t.cameraName(), "static.camera")
	if c.Width.Ok() && c.Height.Ok() {
		p.say(fmt.Sprintf("sensor %s x %s mm", units.Decimal(c.Width.Value, 4), units.Decimal(c.Height.Value, 4)), "activeSensorPhysicalDimensions")
	} else {
		p.lacks("sensor ___ x ___ mm", "the camera's book says it; or pullscore help formats")
	}
	if c.PixelsWide.Ok() {
		p.say(fmt.Sprintf("records %s px", units.Decimal(c.PixelsWide.Value, 0)), "activeSensorResolution.width")
	}
	t.writeSpeed(p)
	if c.ISO.Ok() {
		p.say("iso "+units.Decimal(c.ISO.Value, 0), "isoSpeed")
	}
	if c.ShutterAngle.Ok() {
		p.say("shutter "+units.Style{}.AngleTo(c.ShutterAngle.Value, 2), "shutterAngle")
	}
}

// writeSpeed writes how many frames the camera takes in a second, where that is
// not the rate of the timecode. A plan has that rate itself.
func (t *track) writeSpeed(p *page) {
	c := &t.camera
	if !c.FrameRate.Ok() {
		return
	}
	speed := units.Decimal(c.FrameRate.Value(), 3)
	switch {
	case !t.rate.Ok():
		p.note(1, "shoots %s  # captureFrameRate; delete the # where the plan has another rate", speed)
	case c.FrameRate.Num.Value*t.rate.Denom.Value != t.rate.Num.Value*c.FrameRate.Denom.Value:
		p.say("shoots "+speed, fmt.Sprintf("captureFrameRate; timing.timecode.frameRate is %s", units.Decimal(t.rate.Value(), 3)))
	default:
		p.note(1, "captureFrameRate is %s, as in the timecode: the plan says rate %s", speed, speed)
	}
}
