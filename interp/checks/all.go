// The list of the checks.

package checks

import "pullscore/interp/checks/glass"

// All are the checks, in the order in which they are run on every shot.
var All = []Check{
	noEffect,
	beforeTheShot,
	trimmed,
	inEdit,
	racksOverlap,
	movesOverlap,
	runsInto,
	notOnSubject,
	outOfFrame,
	goesSoft,
	driftsSoft,
	holdBoth,
	ofGlass(glass.NoRing),
	ofGlass(glass.RingUnknown),
	ofGlass(glass.InsideClosest),
	ofGlass(glass.Macro),
	landing,
	reGrip,
	tooDeep,
	seen,
	cutsIntoLine,
	unmotivated,
	jarring,
	lingers,
	restless,
	noTimeToSee,
	ofGlass(glass.Zoom),
	following,
	monitorHides,
	slant,
	ofGlass(glass.Breathes),
	light,
	ofGlass(glass.Speed),
	ofGlass(glass.BeyondMarks),
	ofGlass(glass.FewMarks),
	ofGlass(glass.Diffraction),
}
