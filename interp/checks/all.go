// The list of the checks.

package checks

import (
	"pullscore/interp/checks/edited"
	"pullscore/interp/checks/glass"
	"pullscore/interp/checks/rig"
)

// All are the checks, in the order in which they are run on every shot.
var All = []Check{
	noEffect,
	of(edited.BeforeTheShot),
	of(edited.Trimmed),
	of(edited.Removed),
	of(edited.AcrossACut),
	of(edited.Takes),
	of(edited.InEdit),
	racksOverlap,
	movesOverlap,
	runsInto,
	notOnSubject,
	outOfFrame,
	of(rig.LeavesFrame),
	of(rig.Blocked),
	goesSoft,
	driftsSoft,
	holdBoth,
	of(glass.NoRing),
	of(glass.RingUnknown),
	of(glass.InsideClosest),
	of(glass.Reach),
	of(glass.Macro),
	of(glass.PlayLoses),
	of(glass.Slips),
	landing,
	reGrip,
	tooDeep,
	seen,
	cutsIntoLine,
	of(edited.InsideASentence),
	unmotivated,
	jarring,
	lingers,
	restless,
	noTimeToSee,
	of(glass.Zoom),
	following,
	of(rig.Hands),
	of(rig.PansFast),
	of(rig.OnTripod),
	monitorHides,
	slant,
	of(rig.OffAxis),
	of(rig.TapeDiffers),
	of(glass.Breathes),
	of(glass.Darkens),
	of(glass.Oval),
	light,
	of(glass.Speed),
	of(glass.BeyondMarks),
	of(glass.FewMarks),
	of(glass.Diffraction),
}
