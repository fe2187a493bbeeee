package kit

// The spread of the distance itself by what the camera is on, metres: from
// memory of studies of quiet standing on force plates (the centre of pressure
// wanders by 4 to 6 mm).
var SupportSway = map[string]float64{"hand": 0.006, "shoulder": 0.004}
