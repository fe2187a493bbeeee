// The list of the checks.

package checks

// checks are run in this order on every shot; each has a file of its own.
var checks = []func(Run){
	checkBeforeTheShot,
	checkTrimmed,
	checkEdit,
	checkOverlap,
	checkBlockingOverlap,
	checkRunsInto,
	checkNotOnSubject,
	checkOutOfFrame,
	checkGoesSoft,
	checkHoldBoth,
	checkNoRing,
	checkInsideClosest,
	checkMacro,
	checkHand,
	checkRegrip,
	checkTooDeep,
	checkSeen,
	checkCutsIntoLine,
	checkUnmotivated,
	checkJarring,
	checkNoTimeToSee,
	checkZoom,
	checkFallsBehind,
	checkMonitor,
	checkSlant,
	checkBreathes,
	checkLight,
	checkBeyondMarks,
	checkDiffraction,
}
