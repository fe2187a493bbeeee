// The list of the checks.

package checks

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
	holdBoth,
	noRing,
	insideClosest,
	macro,
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
	zoom,
	fallsBehind,
	monitorHides,
	slant,
	breathes,
	light,
	beyondMarks,
	diffraction,
}
