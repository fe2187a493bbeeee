// The table: what every code means, and what to do about it.

package rule

// table is indexed by code.
var table = [...]Rule{
	// How a plan is written: a line that cannot be read.
	BadCharacter: {"bad-character", Written, Error, nil, NoRow,
		"the language has no use for a character at this place",
		"Pullscore cannot read the rest of this line. Delete the character, or put the whole name in quotes. " +
			"If the file is in UTF-16, save it as UTF-8."},
	BadMark: {"bad-mark", Written, Error, nil, NoRow,
		"a mark lies at something that is no position on a ring",
		"A tape and a chance hang on where a mark lies, so a guess would be worse than nothing. Write an " +
			"angle, a length along the rim, a part of the throw or a clock position. See pullscore help marks " +
			"for each form."},
	BadNumber: {"bad-number", Written, Error, nil, NoRow,
		"a number, timecode or stop has the wrong form",
		"A number that can be read in two ways would set a wrong mark. Write a point in decimals (1.7 m), a " +
			"stop as f/2.8 or T2.9, and feet and inches as 5'6\". A timecode has two digits in each part."},
	ConflictingClauses: {"conflicting-clauses", Written, Error, nil, NoRow,
		"two clauses of one statement say the same thing",
		"Pullscore cannot know which of the two you mean. Keep one of them and delete the other."},
	DuplicateClause: {"duplicate-clause", Written, Error, nil, NoRow,
		"a statement has the same clause twice",
		"A second value for the same thing is most likely a slip. Delete one of the two."},
	ExpectedEnd: {"expected-end", Written, Error, nil, NoRow,
		"the line has more words after the end of the statement",
		"Pullscore does not know what the extra words are for. Delete them, or start a new line if they are a " +
			"statement of their own. Clauses are set off by commas."},
	ExpectedName: {"expected-name", Written, Error, nil, NoRow,
		"a name is missing, or the word there cannot be a name",
		"Names tie a rack to a person, a lens or a cue. Write a single word, or put quotes around a name with " +
			"blanks or signs. A shot's ID is one word, such as 14B."},
	ExpectedText: {"expected-text", Written, Error, nil, NoRow,
		"a text in quotes is missing",
		"Titles, spoken words, reasons and file names need straight or curly quotes. Put the text in quotes."},
	ExpectedValue: {"expected-value", Written, Error, nil, NoRow,
		"a value, a moment or a place is missing",
		"The statement needs a length, a time, a word to start on, or a person here. Write one; the message " +
			"shows which kind fits."},
	ExpectedWord: {"expected-word", Written, Error, nil, NoRow,
		"a word or sign that the statement needs is missing",
		"The statement has a fixed form, and one of its words is not where it belongs. Compare the line with " +
			"the form that the message shows. Often a single letter is wrong."},
	KeywordName: {"keyword-name", Written, Error, nil, NoRow,
		"a word of the language is used as a name",
		"Pullscore would read such a name as the start of something else. Put the name in quotes, or choose " +
			"another."},
	MissingClause: {"missing-clause", Written, Error, nil, NoRow,
		"a clause that the statement needs is missing",
		"Without it the statement has no meaning: a move without its length of time, for example. Add the " +
			"clause that the message names."},
	MissingComma: {"missing-comma", Written, Error, nil, NoRow,
		"a line continues the statement above, which has no comma at its end",
		"A statement may run over several lines if each but the last ends in a comma. Add the comma at the " +
			"end of the line above."},
	MissingUnit: {"missing-unit", Written, Error, nil, NoRow,
		"a number has no unit",
		"A bare 2 can be metres, feet or seconds, and a wrong guess is a soft shot. Write the unit behind the " +
			"number, such as 2 m, 6 ft or 1.5 s."},
	StrayComma: {"stray-comma", Written, Error, nil, NoRow,
		"a comma joins two statements, or ends the last one",
		"A comma at the end of a line says that the statement goes on. Delete the comma, or finish the " +
			"statement on the next line."},
	TooLarge: {"too-large", Written, Error, nil, NoRow,
		"a file, an expression or a note is over a limit",
		"Files far beyond any film are refused, so that a wrong file cannot stop the program. Check that this " +
			"is the file you meant. Split a plan that is truly this long."},
	TooManyMistakes: {"too-many-mistakes", Written, Error, nil, NoRow,
		"the rest of the file was not checked, as it has too many mistakes",
		"Pullscore stops after a thousand mistakes in a file. Mend the first ones and check again. If nearly " +
			"every line is wrong, this is most likely not a plan."},
	UnfinishedText: {"unfinished-text", Written, Error, nil, NoRow,
		"a text has no closing quote",
		"Everything up to the end of the line is read as text. Add the closing quote. A quote inside a text " +
			"is written with a backslash before it."},
	UnknownClause: {"unknown-clause", Written, Error, nil, NoRow,
		"the statement has no such clause",
		"The word may be misspelt, or belong to another statement. The message lists the clauses that fit " +
			"here."},
	UnknownUnit: {"unknown-unit", Written, Error, nil, NoRow,
		"there is no such unit",
		"Pullscore reads only units that it can convert without doubt. Use m, cm, mm, ft, in, s, ms, fr, deg " +
			"or what the message names."},
	UnknownWord: {"unknown-word", Written, Error, nil, NoRow,
		"no statement begins with this word",
		"Pullscore skips the line, so a rack or a cue may be missing from the plan. Correct the word; the " +
			"message suggests the nearest one. A spoken line needs a colon behind the name."},
	UnresolvedMerge: {"unresolved-merge", Written, Error, nil, NoRow,
		"a merge has left two versions and its marks in the file",
		"Pullscore reads nothing else in this file, because each of its lines would be wrong. Keep the lines " +
			"that you want, delete the others and the three lines of marks, and save."},
	WrongSection: {"wrong-section", Written, Error, nil, NoRow,
		"the statement belongs under another header",
		"A lens cannot hold a rack, and a shot cannot hold marks of a ring. Move the line under the header " +
			"that the message names. A header without a name or with a slip may have swallowed it."},

	// What a plan says: it can be read and makes no sense.
	BadRate: {"bad-rate", Meaning, Error, nil, NoRow,
		"this is not a frame rate",
		"Every time of the plan is counted in frames of this rate. Write one of the rates that the message " +
			"lists, such as 23.976, 24, 25 or 29.97df."},
	BadTimecode: {"bad-timecode", Meaning, Error, nil, NoRow,
		"a timecode has a label that the frame rate does not have",
		"Frame 25 does not exist at 24 frames a second, and drop-frame rates leave out some labels. Correct " +
			"the label, or the rate of the plan or of the list."},
	Circle: {"circle", Meaning, Error, nil, NoRow,
		"files, values, moves, subjects or moments depend on themselves",
		"Pullscore cannot compute any of them first. Give one of them a value of its own: a time, a distance, " +
			"or a word of a spoken line."},
	CoversNothing: {"covers-nothing", Meaning, Error, nil, NoRow,
		"a shot covers nothing of its scene",
		"The part that it names ends before it starts, or the shot with which it runs has nothing of the " +
			"action. Say the two moments in the order in which they come, or covers all."},
	CutNotCovered: {"cut-not-covered", Meaning, Error, nil, NoRow,
		"a cut goes to a shot that does not have that moment",
		"A picture cannot show what its camera did not shoot. Let the shot cover more of the scene, or " +
			"cut to another one."},
	DuplicateName: {"duplicate-name", Meaning, Error, nil, NoRow,
		"a name is taken, or differs from another only in upper and lower case",
		"Two people or two lenses with one name cannot be told apart, neither here nor on set. Rename one of " +
			"them."},
	FocalNotOnLens: {"focal-not-on-lens", Meaning, Error, nil, NoRow,
		"the zoom lens does not reach this focal length",
		"The shot asks for a focal length outside the range of the lens. Choose one in the range that the " +
			"message gives, or take another lens."},
	HoldTooEarly: {"hold-too-early", Meaning, Error, nil, NoRow,
		"a hold waits for a rack that depends on a word below it",
		"A hold counts from the landing of the rack above it, and that time is not yet known here. Move the " +
			"hold below the word, or write a pause."},
	LandsTooEarly: {"lands-too-early", Meaning, Error, nil, NoRow,
		"a rack or a follow would end before it starts",
		"The landing lies before the start, so nobody can pull it. Check the two moments, or leave one of " +
			"them out and give the rack a length with over."},
	LoneMark: {"lone-mark", Meaning, Error, nil, NoRow,
		"a lens has one mark only",
		"A single mark says nothing about how the ring turns. Measure a second mark, or delete this one: " +
			"Pullscore then works from the throw of the ring."},
	MarkBeyondClosest: {"mark-beyond-closest", Meaning, Error, nil, NoRow,
		"a mark is nearer than the closest distance of the lens",
		"The ring stops at its closest distance, so no mark lies before it. One of the two is misread, or " +
			"the lens focuses nearer than its engraving says. Correct the mark, or write what closest really is."},
	MarksDisagree: {"marks-disagree", Meaning, Error, nil, NoRow,
		"marks, girth and throw of a ring cannot all be right",
		"Two distances at one angle, marks beyond the throw, or a rim that does not fit its girth put people " +
			"on wrong marks. One of the figures is misread. Measure the way round the ring again, then the " +
			"throw, then the mark."},
	MarksOutOfOrder: {"marks-out-of-order", Meaning, Error, nil, NoRow,
		"the marks of a ring do not go from near to far",
		"On a focus ring every mark farther away lies at a larger angle. A mark with a wrong number would " +
			"bend every angle beside it. Measure both marks again from the closest stop."},
	MixedMarks: {"mixed-marks", Meaning, Error, nil, NoRow,
		"the marks of one lens are of different kinds",
		"Angles, lengths along the rim, parts of the throw and clock positions count from different points. " +
			"Write all marks of a lens in one of these forms."},
	MoreFaults: {"more-faults", Meaning, Error, []Severity{Warning, Note}, NoRow,
		"a file has more faults than are listed one by one",
		"Pullscore lists the first faults of a foreign file and counts the rest. Mend the listed ones and " +
			"check again. The severity is that of the worst fault in the rest."},
	NestedTooDeep: {"nested-too-deep", Meaning, Error, nil, NoRow,
		"moves within moves, or subjects placed on subjects, go too deep",
		"A plan that refers through so many levels cannot be followed by a reader either. Give one of the " +
			"subjects a distance of its own, or write out one of the moves."},
	NoBeginsAt: {"no-begins-at", Meaning, Error, nil, NoRow,
		"a shot has a timecode but no begins at",
		"A timecode is a place in the film, and this shot has none yet. Add begins at to the shot, or write a " +
			"time from the start of the shot, such as 2.5 s."},
	NoCamera: {"no-camera", Meaning, Error, nil, NoRow,
		"the shot has no camera",
		"Without a camera there is no sensor, and so no limit for what is sharp. Write with camera NAME in " +
			"the shot, or once before the first shot."},
	NoCameraPlace: {"no-camera-place", Meaning, Error, nil, NoRow,
		"somebody stands on the floor of a scene, and the camera of the shot has no place there",
		"A distance runs from a camera. Write camera at and its place, or tape them for this shot, as in " +
			"subject ANNA at 2.1 m."},
	NoClosest: {"no-closest", Meaning, Error, nil, NoRow,
		"a lens says neither how close it focuses nor a mark",
		"Pullscore cannot place the ring without one of them. Write closest and the distance on the lens, " +
			"such as closest 45 cm. Measured marks are better still."},
	NoFocal: {"no-focal", Meaning, Error, nil, NoRow,
		"a lens has no focal length",
		"The focal length decides how much is sharp. Write focal and the length, such as focal 75 mm."},
	NoLens: {"no-lens", Meaning, Error, nil, NoRow,
		"the shot has no lens",
		"Without a lens Pullscore can compute neither sharpness nor the ring. Write with lens \"NAME\" in the " +
			"shot, or once before the first shot."},
	NoLine: {"no-line", Meaning, Error, nil, NoRow,
		"a speaker has no line in this shot",
		"A moment depends on the line of somebody who says nothing here. Add the line, or choose another word " +
			"or a cue."},
	NoRim: {"no-rim", Meaning, Error, nil, NoRow,
		"marks along the rim need the way round it",
		"A length along the rim is an angle only if the size of the ring is known. Wrap a strip of paper " +
			"round the ring and measure it, or say where closest and inf lie on the same strip."},
	NoScene: {"no-scene", Meaning, Error, nil, NoRow,
		"the script has no scene with this number",
		"The lines of the plan cannot be compared with the page. Check the number; a script may write it as " +
			"14A or 14 A. Leave scene out to compare with the whole script."},
	NoSensor: {"no-sensor", Meaning, Error, nil, NoRow,
		"a camera has no sensor size",
		"The size of the sensor decides how far blur is enlarged on the screen. Write the size of the picture " +
			"that is used, such as sensor 24.89 x 18.66 mm."},
	NoStaging: {"no-staging", Meaning, Error, nil, NoRow,
		"a shot speaks of a scene, and none stands above it",
		"A shot takes its lines, places and times from the scene above it. Write the action under scene " +
			"and its title, above the shot."},
	NoStop: {"no-stop", Meaning, Error, nil, NoRow,
		"the shot has no stop",
		"How much is sharp depends on the stop more than on anything else. Write with stop and the stop, such " +
			"as stop f/2.8, in the shot or before the first shot."},
	NoStops: {"no-stops", Meaning, Error, nil, NoRow,
		"a lens does not say which stops it has",
		"Pullscore proposes only stops that the lens has. Write the widest and the smallest, such as stops " +
			"f/1.8 to f/22."},
	NoSuchFile: {"no-such-file", Meaning, Error, nil, NoRow,
		"a file cannot be read",
		"The kit, cut, script or log that the plan names is not there, or may not be opened. File names count " +
			"from the folder of the plan. Check the name, its case, and the folder."},
	NoThrow: {"no-throw", Meaning, Error, nil, NoRow,
		"marks are parts of a throw that nothing states",
		"A part of an unknown turn is no angle. Write how far the ring turns, as in ring 300 deg. See " +
			"pullscore help throw for how to measure it."},
	NotOnClock: {"not-on-clock", Meaning, Error, nil, NoRow,
		"a clock position has an hour that no clock has",
		"A clock has 12 hours. Read the position again, seen from behind the camera, with 12 at the top."},
	NotStaged: {"not-staged", Meaning, Error, nil, NoRow,
		"a statement needs a camera that has a place on the floor, or a shot of a scene",
		"Without a place a camera cannot go to another one, and no tape from it can be compared. Write " +
			"camera at and its place."},
	OutOfRange: {"out-of-range", Meaning, Error, nil, NoRow,
		"a number is too large or too small to be right",
		"The value lies beyond anything on a set, such as a person nearer than 5 mm or a shot longer than a " +
			"day. Check the unit and the decimal point."},
	SaidTwice: {"said-twice", Meaning, Error, nil, NoRow,
		"a statement that may occur once occurs twice",
		"Only one of the two can hold, and Pullscore will not choose. Delete the one that is out of date."},
	SceneSetsTimes: {"scene-sets-times", Meaning, Error, nil, NoRow,
		"a shot would move the clock of its scene",
		"Every set-up of a scene shares its clock. Give the line a moment, or write it in the scene, " +
			"where all shots have it."},
	TooDeepUse: {"too-deep-use", Meaning, Error, nil, NoRow,
		"files use other files through too many levels",
		"Each use may lead to a file that uses others, but not for ever. Let the plan use the kit files " +
			"directly."},
	TooLong: {"too-long", Meaning, Error, nil, NoRow,
		"a shot, a speech or a subtitle is longer than any film has",
		"Such a length is most likely a slip, such as a move that uses itself twice at every level. Shorten " +
			"it, or split the shot. In a foreign file the rest is still read."},
	TooManyFiles: {"too-many-files", Meaning, Error, nil, NoRow,
		"a plan uses too many files",
		"A plan reads a limited number of files, so that a slip cannot read a whole disk. Put the kit into " +
			"fewer files."},
	TooManyTimes: {"too-many-times", Meaning, Error, nil, NoRow,
		"a rack has a start, a landing and a length at once",
		"Two of the three already decide the third. Delete the one that matters least, mostly over."},
	TubeTooLong: {"tube-too-long", Meaning, Error, nil, NoRow,
		"an extension tube leaves no distance in front of the lens",
		"A tube brings everything nearer, until the plane of focus reaches the glass. Take a shorter tube."},
	UnknownCut: {"unknown-cut", Meaning, Error, nil, NoRow,
		"a file of a cut has a form that Pullscore does not read",
		"Pullscore reads subtitles (SubRip, WebVTT), edit decision lists and OpenTimelineIO. Ask the editor " +
			"for one of them. Pullscore looks at what the file holds, not at its ending."},
	UnknownFormat: {"unknown-format", Meaning, Error, nil, NoRow,
		"no sensor format has this name",
		"The size of the sensor decides every width of view and every blur. Write its width and height in " +
			"millimetres, or a name that pullscore help formats lists."},
	UnknownName: {"unknown-name", Meaning, Error, nil, NoRow,
		"nothing declares this name",
		"A rack to a name that nobody declared has no distance. Declare it, such as subject NORA at 1.7 m, or " +
			"correct the spelling. Names of cameras and lenses come from the kit that the plan uses."},
	UnknownShot: {"unknown-shot", Meaning, Error, nil, NoRow,
		"no shot of the plan or of the scene has this ID",
		"A shot that runs with another, or a cut to one, needs it by the ID in its header. Correct the " +
			"ID, or write the shot."},
	WhichFormat: {"which-format", Meaning, Error, nil, NoRow,
		"several sensors of different sizes have this name",
		"A wrong size changes every figure of the plan. Look the size up in the camera's book and write it " +
			"in millimetres, or write the full name of the format."},
	WhichLine: {"which-line", Meaning, Error, nil, NoRow,
		"the speaker has several lines, and it is not clear which one you mean",
		"The rack would start seconds too early or too late on the wrong line. Write the words instead, such " +
			"as OTTO \"every\", or declare a cue on the line."},
	WhichWay: {"which-way", Meaning, Error, nil, NoRow,
		"clock positions need the way that the ring turns",
		"A tape on the ring goes round with the clock or against it, and the two give different angles. Look " +
			"from behind the camera, turn towards infinity, and write turns left or turns right."},
	WholeTurn: {"whole-turn", Meaning, Error, nil, NoRow,
		"between two marks the tape has gone nowhere, or a whole turn",
		"A clock position does not show how many turns lie between two marks. Set a mark between them, less " +
			"than a turn from each."},
	WordNotFound: {"word-not-found", Meaning, Error, nil, NoRow,
		"no line of the shot has these words",
		"The rack has nothing to start on. Check the spelling against the line as it is written here; the " +
			"message names the nearest word. Words are compared without case and punctuation."},
	WordTwice: {"word-twice", Meaning, Error, nil, NoRow,
		"the words occur in more than one place",
		"The puller could start on the wrong one. Say which: put the speaker before the words, add a number " +
			"(\"every\" 2), or quote more of the line."},
	WrongArguments: {"wrong-arguments", Meaning, Error, nil, NoRow,
		"a move gets too few or too many values",
		"Every parameter of a move takes one value, in the order of its header. Compare the call with the " +
			"header that the message shows."},
	WrongKind: {"wrong-kind", Meaning, Error, nil, NoRow,
		"a name means another kind of thing than the statement needs",
		"A cue cannot be focused on, and a lens cannot speak. Check which name you meant; the message says " +
			"what this one is."},
	WrongUnit: {"wrong-unit", Meaning, Error, nil, NoRow,
		"a value has the wrong unit, such as a length in place of a time",
		"The number has a unit that does not fit here. Correct the unit; the message shows an example."},

	// Other people's files, which an edit or a script names.
	AmbiguousTime: {"ambiguous-time", Files, Error, nil, NoRow,
		"programs read this time in two ways",
		"Some programs read the 5 of 1:02,5 as half a second, others as five thousandths. Pullscore takes it " +
			"as half a second. Write three digits behind the comma to be sure."},
	BadClips: {"bad-clips", Files, Error, []Severity{Warning, Note}, NoRow,
		"a list of clips cannot be read, or a row of it",
		"Pullscore leaves out a row without a place in its source, so a take may seem to be missing. Export the " +
			"list once more with tabs, and with the columns Name, Start and End."},
	BadEncoding: {"bad-encoding", Files, Error, []Severity{Warning}, NoRow,
		"the file holds bytes that are invalid in its encoding",
		"Names and lines may come out wrong and then no longer match the plan. Save the file as UTF-8. A " +
			"subtitle file in another encoding is read, with a warning."},
	BadEvent: {"bad-event", Files, Error, nil, NoRow,
		"a line of an edit decision list is not a complete event",
		"Pullscore leaves the event out, so a shot may seem to be missing from the cut. Export the list once " +
			"more, or complete the line: number, reel, channels, transition and four timecodes."},
	BadJson: {"bad-json", Files, Error, nil, NoRow,
		"a file is not valid JSON",
		"Pullscore cannot read the file from this place on. Most likely it was cut off or edited by hand. " +
			"Export it once more."},
	BadMarker: {"bad-marker", Files, Error, nil, NoRow,
		"a marker of an edit decision list has no time",
		"A cue takes its time from the marker of its name, and this one has none. A marker line has LOC:, a " +
			"timecode, a colour and a text."},
	BadSpeed: {"bad-speed", Files, Error, nil, NoRow,
		"a speed line of an edit decision list is not complete",
		"The clip may run at another speed than Pullscore assumes, so its times may be wrong. A speed line " +
			"has M2, a reel, frames a second and a timecode."},
	BadTime: {"bad-time", Files, Error, nil, NoRow,
		"a time in a subtitle file is not a time",
		"Pullscore leaves the subtitle out, and its line keeps the time of the plan. Correct the time in the " +
			"form that the message shows."},
	BadXml: {"bad-xml", Files, Error, nil, NoRow,
		"a file is not valid XML",
		"Pullscore cannot read the file from this place on. Most likely it was cut off or edited by hand. " +
			"Export it once more."},
	Covered: {"covered", Files, Note, nil, NoRow,
		"a clip of a timeline lies wholly under other pictures",
		"Of tracks the last is on top, so nothing of the clip is seen. Pullscore takes the clip as not in the " +
			"cut. If the picture above it can be seen through, turn that off in the timeline and export it again."},
	DropDiffers: {"drop-differs", Files, Warning, nil, NoRow,
		"an edit decision list says non-drop and writes drop-frame labels",
		"At 29.97 the two ways of counting differ by 3.6 s an hour. Pullscore follows what the list says in " +
			"FCM. Ask the editor which is right."},
	DropFrame: {"drop-frame", Files, Error, nil, NoRow,
		"an edit decision list counts drop-frame at a rate that has no such labels",
		"Drop-frame labels exist at 29.97 and 59.94 only. Most likely the plan has another rate than the " +
			"list. Correct the rate in the plan."},
	EndsBeforeItStarts: {"ends-before-it-starts", Files, Error, nil, NoRow,
		"a subtitle or an event ends before it starts",
		"Pullscore leaves it out, since neither time can be trusted. Correct the two times in the file, or " +
			"export it again."},
	EventsOverlap: {"events-overlap", Files, Warning, nil, NoRow,
		"an event begins before the one above it ends in the record",
		"A cut shows one picture at a time, so one of the two times is wrong. Pullscore shifts nothing. Check " +
			"both against the cut."},
	ForeignLens: {"foreign-lens", Files, Note, nil, NoRow,
		"a lens file does not say all that Pullscore wants to know of a lens",
		"The statements that Pullscore prints have a comment in place of each missing value. The comment says " +
			"how to get it. Measure the value, write it in, and delete the # of the line."},
	ForeignScatter: {"foreign-scatter", Files, Warning, nil, NoRow,
		"a lens file has several distances at one position of the ring",
		"The distances differ by more than 2 % in 1/distance, or do not rise with the ring. Pullscore takes the " +
			"middle one, or leaves the position out. Check these marks by eye before you pull by them."},
	ForeignUnit: {"foreign-unit", Files, Error, nil, NoRow,
		"a value in a lens file is outside what its unit allows, or is no number",
		"A distance of 0 or below is no distance, so Pullscore does not use the value. The message names the " +
			"field and its place. Export the file again, or correct the value there."},
	GarbledArrow: {"garbled-arrow", Files, Error, nil, NoRow,
		"a subtitle has no arrow between its two times",
		"Pullscore leaves the subtitle out. Write --> with a blank on either side."},
	LengthsDiffer: {"lengths-differ", Files, Warning, nil, NoRow,
		"an event has another length in its source than in the record",
		"Without a speed line both must be equally long. Pullscore follows the record. Check whether a speed " +
			"change was lost on export."},
	MoreTimelines: {"more-timelines", Files, Warning, nil, NoRow,
		"a file holds several timelines, and only the first is read",
		"The shot may be in one of the others. Export the one that you mean to a file of its own."},
	NoDuration: {"no-duration", Files, Warning, nil, NoRow,
		"a subtitle ends when it starts",
		"Pullscore uses the start, and the line keeps its length from the plan. Correct the end if you know " +
			"it."},
	NoLength: {"no-length", Files, Error, nil, NoRow,
		"a clip or gap of a timeline has no length",
		"What lies behind it in the track begins too early, and so do its shots. Export the timeline again, " +
			"with a source range for every clip."},
	NoSignature: {"no-signature", Files, Error, nil, NoRow,
		"a WebVTT file does not begin with WEBVTT",
		"Players refuse such a file, and so does Pullscore. Write WEBVTT alone on the first line."},
	NoSize: {"no-size", Files, Error, nil, NoRow,
		"a canvas or framing of a framing decision list has no usable size",
		"Pullscore leaves out what depends on the size. Export the list again. A framing has a width and a " +
			"height in pixels and is no larger than its canvas."},
	NoTime: {"no-time", Files, Error, nil, NoRow,
		"a marker or a time of a timeline has no value",
		"Pullscore takes it as 0 or leaves it out. Export the timeline again, or place the marker again in the " +
			"editing program."},
	NoTimeline: {"no-timeline", Files, Error, nil, NoRow,
		"an OpenTimelineIO file holds no timeline",
		"Pullscore cannot find any shot in it. Export the whole timeline, not a clip or a bin."},
	NotAScript: {"not-a-script", Files, Error, []Severity{Warning}, NoRow,
		"a file in XML is not a script page",
		"Pullscore reads script pages in Fountain and in FDX, the XML of script programs. A template is read " +
			"all the same, with a warning. Export the page as FDX or Fountain."},
	OtherRate: {"other-rate", Files, Warning, nil, NoRow,
		"the timeline has another frame rate than the plan",
		"Pullscore converts the times, but they will not fall on whole frames. Set the rate of the plan to " +
			"that of the cut, unless you want the difference."},
	OtherVersion: {"other-version", Files, Note, nil, NoRow,
		"a file has a version of its form that Pullscore does not know",
		"Pullscore reads the file as the nearest version that it knows. Compare the values that it prints with " +
			"the file."},
	OutOfOrder: {"out-of-order", Files, Warning, nil, NoRow,
		"an event lies before the one above it in the record",
		"A list is normally sorted by record time, so a timecode may be wrong. Pullscore reads it all the " +
			"same. Check the two events."},
	PdfScript: {"pdf-script", Files, Error, nil, NoRow,
		"a file is a PDF, or the own file of a script program",
		"A PDF has places of letters and no lines of a script, so Pullscore does not guess at them. Ask for the " +
			"page as FDX or Fountain."},
	TextOutsideACue: {"text-outside-a-cue", Files, Warning, nil, NoRow,
		"text of a subtitle file belongs to no subtitle",
		"The text may be a spoken line whose timing line is damaged. Look at the lines above it."},
	UnclosedBoneyard: {"unclosed-boneyard", Files, Warning, nil, NoRow,
		"a comment in a script is opened and never closed",
		"Everything behind /* counts as commented out, so lines may seem to be missing. Close it with */."},
	UnknownLine: {"unknown-line", Files, Warning, nil, NoRow,
		"a line of an edit decision list is not understood and is skipped",
		"Most such lines are remarks of a program and do no harm. If it holds a clip name or a speed, the " +
			"shot may not be found."},
	UnknownSchema: {"unknown-schema", Files, Note, nil, NoRow,
		"an object of a timeline is of a kind that Pullscore does not know",
		"It is skipped and takes no time. If it stands for a part of the picture, replace it by a clip before " +
			"the export."},

	// Findings of a shot that has been computed.
	AcrossACut: {"across-a-cut", Shot, Note, nil, Hand,
		"the cut jumps in the middle of a rack",
		"The audience sees the focus jump with the picture. Where the rack goes on in another take it is a " +
			"warning: the focus of both has to match at the join."},
	AfterTheShot: {"after-the-shot", Shot, Error, nil, Hand,
		"something would end after the shot does",
		"The shot says how long it lasts, and this does not fit into it. Make the shot longer with lasts, or " +
			"start earlier. Nobody pulls focus after the cut."},
	BeforeTheShot: {"before-the-shot", Shot, Error, nil, Hand,
		"something would have to start before the shot does",
		"A rack that lands on an early word needs time before it, and the shot does not have it. Give the " +
			"shot a pause before its first line, or make the rack shorter. On set, agree how long after " +
			"\"action\" the line comes."},
	BeyondFarthest: {"beyond-farthest", Shot, Error, nil, Distance,
		"a close-up lens or a tube lets the lens focus no farther than this",
		"A close-up lens of 2 diopters is sharp at half a metre and nearer, whatever the ring says. Take a " +
			"weaker one, or bring the person nearer."},
	BeyondMarks: {"beyond-marks", Shot, Warning, nil, Hand,
		"the focus goes beyond the marks of the lens, and nothing says where the ring ends",
		"There is no angle, no window and no chance out there. Say how far the ring turns, as in ring 300 deg, " +
			"or mark inf. Nearer than the first mark, say closest."},
	Blocked: {"blocked", Shot, Warning, nil, Sharp,
		"somebody stands between the camera and the one on whom the focus is",
		"The line of sight passes within 15 cm of a person, and is not over their head. Whoever only passes, in " +
			"less than half a second, is not told of. Both are common practice, no source. Move the camera or one " +
			"of the two."},
	Breathes: {"breathes", Shot, Note, nil, Sharp,
		"the picture changes its size visibly during the rack",
		"The audience may see the frame grow or shrink while the focus moves. Choose a shorter rack, a stop " +
			"with less travel, or a lens that breathes less. Tell the camera operator, who can trim the frame."},
	BrokenLog: {"broken-log", Shot, Warning, []Severity{Error}, NoRow,
		"rows of a log of takes cannot be used",
		"The puller's hand is fitted from the rows that can be read, so faulty rows make it less sure. Each " +
			"fault is listed with its line and column. Where no row can be used, this is an error."},
	ByWire: {"by-wire", Shot, Warning, nil, Hand,
		"the ring works by wire, so no mark repeats",
		"On such a ring the same turn gives another distance at another speed. No angle and no chance can be " +
			"given. Set the camera to a linear ring if it has one, or take a lens with hard stops."},
	CannotHoldBoth: {"cannot-hold-both", Shot, Error, nil, Sharp,
		"no focus setting keeps all of a split sharp",
		"The people stand too far apart in depth for this stop. Stop down, move them closer together, or rack " +
			"between them."},
	CrossesLine: {"crosses-line", Shot, Warning, nil, NoRow,
		"two set-ups stand on either side of the line between two people who talk",
		"At a cut between them, who looked right looks left, and the two seem to look past each other. The line " +
			"goes from each to whom they speak, or as `line NAME to NAME` says. A camera within 20 cm of it is on " +
			"neither side. Put both cameras on one side, or add because and the reason behind the place of one of " +
			"them."},
	CueNotInEdit: {"cue-not-in-edit", Shot, Warning, nil, Lines,
		"the cut has no marker for this cue",
		"The cue keeps the time of the plan, which may no longer be right. Ask the editor to set a marker " +
			"with the name of the cue."},
	CutsIntoLine: {"cuts-into-line", Shot, Warning, nil, Lines,
		"the focus leaves a speaker within the line, without a reason",
		"The audience looks at whoever speaks, and the picture takes them away. Wait for the end of the line, " +
			"or add because and the reason if you want it."},
	Darkens: {"darkens", Shot, Note, nil, NoRow,
		"the picture changes its light during the rack",
		"A lens passes less light near, because it moves away from the sensor. A meter at the camera does " +
			"not see this. Keep the stop that suits the end that matters, or change the light with the focus."},
	Diffraction: {"diffraction", Shot, Note, nil, NoRow,
		"the stop alone blurs more than the screen shows",
		"At so small a stop nothing in the picture is fully sharp, however well it is pulled. Open up and use " +
			"a neutral density filter."},
	DoesNotMatch: {"does-not-match", Shot, Warning, nil, NoRow,
		"a set-up differs from the one that it is to match",
		"Two singles match if the audience cannot tell them apart. Distance may differ by 5 %, the lens by 1 %, the " +
			"stop by a third, its height to the eyes by 10 cm. The two look past the lens on opposite sides, by the " +
			"same angle to 5 deg. All of that is common practice, no source. Take the place that the message gives, " +
			"or delete the matches."},
	DriftsSoft: {"drifts-soft", Shot, Warning, nil, Sharp,
		"the person in focus, or the camera, sways out of the sharp zone too often",
		"Nobody stands quite still, and a camera in the hand does not either. With so little depth of field, " +
			"even a focus exactly on the mark is often soft. Stop down, put the camera on a tripod, or take more " +
			"distance. Write how much a person sways with sways; the default is from memory."},
	FallsBehind: {"falls-behind", Shot, Warning, nil, Hand,
		"a follow lags by more than the depth of field allows",
		"The person moves faster than a hand can follow at this stop. Slow the move, stop down, or rehearse " +
			"it with marks on the floor."},
	Faint: {"faint", Shot, Note, nil, Sharp,
		"the audience barely sees the rack",
		"The blur before the rack is so small that few people will notice the change. If the rack tells the " +
			"story, open up or put more distance between the two. Otherwise leave it out."},
	FasterThanAHand: {"faster-than-a-hand", Shot, Error, nil, Hand,
		"the hand would have to turn faster than a hand can",
		"Nobody can turn the ring at this speed. Allow more time, use a faster gear, or take a lens with a " +
			"shorter throw."},
	FewMarks: {"few-marks", Shot, Note, nil, Hand,
		"between its marks the angle of a distance is not known well enough",
		"A ring between two marks far apart may turn in many ways. Measure one more mark between them, or " +
			"set this mark by eye on the day. The command pullscore lens names the mark that helps most."},
	FewTakes: {"few-takes", Shot, Note, nil, NoRow,
		"the hand is fitted from fewer than 36 takes",
		"So few takes say little, so the fit stays near the default hand. Record more takes before you rely on " +
			"a chance close to the one that you want."},
	FocusJumps: {"focus-jumps", Shot, Warning, nil, NoRow,
		"at a cut, who was sharp is soft, or nobody in the picture is sharp",
		"The audience looks where the focus was before the cut, and sees a blur of more than 4.6 arcmin. Or " +
			"nobody is sharp in the first 0.3 s of the new set-up, as its rack has not landed. Cut earlier or " +
			"later, or let the rack land sooner. With `because` the cut is meant so, and nothing is told."},
	GoesSoft: {"goes-soft", Shot, Warning, nil, Sharp,
		"somebody is soft, from when to when: the distance changes, and nothing follows",
		"The focus stays where it was while the person walks away from it, or the camera goes or turns. Add " +
			"a follow, or rack again once the move is over."},
	HandsApart: {"hands-apart", Shot, Warning, nil, Hand,
		"one person pans and pulls at once, and the two hands do not go together",
		"Two hands of one person start and land together, whatever each of them has to do (Kelso, Southard " +
			"and Goodman, 1979). Where they are to start or land apart, or one of them has to take a new grip, " +
			"one of them fails. Give the rack the times of the pan with `with pan`, or have a second person " +
			"pull."},
	HardToFollow: {"hard-to-follow", Shot, Warning, nil, Hand,
		"in its worst half second a follow is sharp less often than wanted",
		"The hand sees a change of speed a fifth of a second late, and is also a little early or late. Away " +
			"from a mark, the puller judges distance by eye. Stop down, give the move more time, put marks on the " +
			"floor, or use a slower gear. Nobody has measured how well focus is followed: rehearse it, and watch " +
			"the playback."},
	HardToLand: {"hard-to-land", Shot, Warning, nil, Hand,
		"a pull does not land with the wanted chance in its time",
		"With this much time, this window and this hand, too many takes will be soft. Allow more time, stop " +
			"down, or use a slower gear or a larger wheel. Plan another take if none of them is possible."},
	InsideASentence: {"inside-a-sentence", Shot, Warning, nil, Lines,
		"a rack begins inside a sentence of an unscripted talk, without a reason",
		"Nobody knows how such a sentence goes on, and the audience listens to it. Rack in the silence between " +
			"two sentences, or add because and the reason if you want it."},
	InsideClosest: {"inside-closest", Shot, Error, nil, Distance,
		"the focus would have to go nearer than the lens can",
		"The ring stops before this distance. Move the person or the camera, or take a lens that focuses " +
			"closer."},
	Jarring: {"jarring", Shot, Warning, nil, Sharp,
		"the rack is too quick for how much it changes",
		"At 30 arcmin of blur a rack needs the time that quickest states, and less for a smaller change. If " +
			"the plan does not state quickest, a larger change needs more than the default. The time grows with " +
			"the logarithm of blur, since the eye compares blurs by ratio (from memory). The 30 arcmin are common " +
			"practice, no source. A change that nobody sees cannot jar. Allow more time, or change quickest if you " +
			"want the jolt."},
	LawAssumed: {"law-assumed", Shot, Note, nil, Hand,
		"the ring has no marks, so its angles come from a computed law",
		"Pullscore then takes the lens as one that focuses as a unit, and few lenses do. A window may be " +
			"0.62 to 1.44 times as wide. Measure some marks: pullscore lens --sheet prints a tape, a target and " +
			"a table."},
	LeavesFrame: {"leaves-frame", Shot, Warning, nil, Sharp,
		"somebody goes out of the picture while the focus is on them",
		"The camera turns or goes away from them, or they walk out. Pan with them, rack to somebody who is " +
			"still in the picture, or let the move end earlier."},
	Light: {"light", Shot, Warning, nil, NoRow,
		"the stop does not fit the light",
		"The picture would be too bright or too dark by more than a quarter of a stop, after all filters. " +
			"Change the filter, the sensitivity or the shutter, or ask for other light. A later change of the " +
			"stop changes every chance in the shot."},
	LineDiffers: {"line-differs", Shot, Note, nil, Lines,
		"the cut has other words for a line",
		"Pullscore still uses the times of the cut. If a rack starts on one of the changed words, check it."},
	LineNotInEdit: {"line-not-in-edit", Shot, Warning, nil, Lines,
		"the cut does not have this line",
		"The line keeps the time of the plan, so racks that start on it may be wrong. Ask whether it was cut, " +
			"or correct its words."},
	LinesElsewhere: {"lines-elsewhere", Shot, Warning, nil, Lines,
		"the subtitles have the lines far from the clips of their shot",
		"Most often the subtitles start from another timecode than the plan says. Check the from of the edit " +
			"statement. Until then the lines keep the times of the plan."},
	LogSlips: {"log-slips", Shot, Note, nil, NoRow,
		"takes of a log that lie far outside the others; they are not in the spread",
		"Such a take says that something went wrong, not how well the hand lands. The share of such takes " +
			"lowers every chance of this hand instead. Look at the rows that the message names. Delete rows that " +
			"were not takes, such as a call that was cut off."},
	LosesFocusInZoom: {"loses-focus-in-zoom", Shot, Warning, nil, Sharp,
		"the lens loses focus while it zooms",
		"No mark holds while the focal length changes. Zoom first and take the marks at its end, or use a " +
			"lens that keeps its focus."},
	Macro: {"macro", Shot, Note, nil, Distance,
		"the focus is too near for the figures to hold",
		"Closer than four focal lengths from the sensor, simple lens formulas no longer fit. Pullscore leaves " +
			"the figures out. Measure from the lens (tape from lens), and find the focus by eye."},
	MonitorHides: {"monitor-hides", Shot, Note, nil, Sharp,
		"it looks sharp on the monitor on set and is soft on the screen",
		"The monitor is too small or too far away to show this blur. Judge by the marks, by magnified " +
			"playback, or on a larger monitor."},
	MovedInEdit: {"moved-in-edit", Shot, Note, nil, Lines,
		"the cut has the shot at another time than the plan says",
		"Pullscore follows the cut. Change begins at if you want the plan to be right without the cut."},
	MovesOverlap: {"moves-overlap", Shot, Error, nil, Distance,
		"someone, or the camera, moves in two ways at once",
		"The second move starts before the first has ended, so nobody can say where they are. Start it later, " +
			"or make the first one shorter."},
	NeverSure: {"never-sure", Shot, Warning, nil, Hand,
		"a pull misses too often however slowly it is made",
		"More time does not help here: the window is too small for the spread of this hand. Only stop, " +
			"distance, lens, gear or a larger wheel help."},
	NoEffect: {"no-effect", Shot, Note, nil, Lines,
		"a hold changes nothing, as it is over before the clock reaches it",
		"A hold counts from the landing of the rack above it, and that moment has passed. Write a pause if " +
			"you want time from here."},
	NoRing: {"no-ring", Shot, Error, nil, Hand,
		"the focus of this lens cannot be pulled",
		"The lens has a fixed focus or no ring at all. Take another lens for this shot, or let people come to " +
			"the focus."},
	NoSuchClip: {"no-such-clip", Shot, Warning, nil, NoRow,
		"no list of the cut has a clip of this name",
		"The statement finds nothing, and the shot has the clips of its other statements alone. Compare the " +
			"name with the list; * stands for any signs."},
	NoTakes: {"no-takes", Shot, Warning, nil, NoRow,
		"the log has no takes of this puller",
		"Pullscore uses the hand of the plan instead. Check the name of the puller in the log, its spelling " +
			"included."},
	NoTimeToMove: {"no-time-to-move", Shot, Error, nil, Hand,
		"the time is over before the hand moves",
		"A puller who reacts to a word needs about a quarter of a second before the hand starts. Allow more " +
			"time, or start from an earlier cue. Re-grips also take time."},
	NoTimeToSee: {"no-time-to-see", Shot, Warning, nil, Sharp,
		"the focus leaves before the eye has arrived",
		"The audience needs time to find what has become sharp. Hold a little longer before the next rack."},
	NoTitle: {"no-title", Shot, Note, nil, NoRow,
		"the plan has no title",
		"Every paper carries the title, and sheets without one get mixed up. Add plan \"TITLE\" as the first " +
			"line."},
	NotCovered: {"not-covered", Shot, Note, nil, NoRow,
		"no set-up of the scene covers these words",
		"The scene has two set-ups or more, and none of them runs while the words are said. Lengthen the part " +
			"that one of them covers, or add a set-up. Lines with `off` are left out, as nobody has to be seen."},
	NotHeld: {"not-held", Shot, Warning, nil, NoRow,
		"no set-up of the scene holds who speaks these words",
		"A set-up holds a word if its speaker is sharp all the while, in the picture, and not behind " +
			"somebody. The finding says for every set-up that covers the words why it does not. Rack earlier in " +
			"one of them, close the stop, or say with `off` that nobody has to be seen."},
	NothingSharp: {"nothing-sharp", Shot, Note, nil, Sharp,
		"the rack is so slow that nothing looks sharp for over a second",
		"The focus has left one person and is not yet on the other, and nobody in between is sharp. So the " +
			"audience has nothing to look at. One second is common practice, no source. Rack faster, stop down, or " +
			"keep it if you want the drift."},
	NotOnScreen: {"not-on-screen", Shot, Note, nil, NoRow,
		"the cut is on a set-up that does not hold who speaks, and another does",
		"That may be what you want, as with the face of somebody who listens. Else move the cut to the word. " +
			"It is told only where the scene or an edit says the cuts."},
	NotOnSubject: {"not-on-subject", Shot, Error, nil, Distance,
		"a follow of someone whom the focus is not on",
		"The hand cannot follow a person who is not sharp at the start. Rack to them first."},
	NotSeen: {"not-seen", Shot, Warning, nil, Sharp,
		"the audience does not see the rack",
		"The two distances are both sharp at this stop, so nothing seems to change. Open up, or leave the " +
			"rack out and save the risk."},
	OnTripod: {"on-tripod", Shot, Warning, nil, Camera,
		"a camera on a tripod is to go somewhere in a staged shot",
		"A tripod only pans and tilts. Say in the section of the camera what carries it, or give the shot another " +
			"camera. The chances of staying sharp hang on what carries it."},
	OutOfFrame: {"out-of-frame", Shot, Warning, nil, Distance,
		"the focus goes to somebody outside the picture",
		"The lens does not see the place where the person stands. Check the side and the distance, or take a " +
			"wider lens. A camera that pans or tilts can turn to them."},
	OutsideTravel: {"outside-travel", Shot, Error, nil, Hand,
		"the focus goes outside the part of the ring that the wheel reaches",
		"The hand wheel stops before this distance. Map the wheel to a wider part of the ring, or leave out " +
			"from and to, so that it covers all of it."},
	Oval: {"oval", Shot, Note, nil, Sharp,
		"the disc of blur of a squeezed lens is higher than wide",
		"An anamorphic lens blurs the height more than the width. Sharpness is judged by the height, which " +
			"is what the audience sees first."},
	PanAndPull: {"pan-and-pull", Shot, Note, nil, Hand,
		"a turn of the camera and a pull overlap: that takes two people, or two hands",
		"The chance of landing is that of a hand which does nothing else, and does not count the turn. " +
			"Rehearse the two together. Name who does what: `with operator NAME, puller NAME`."},
	PansFast: {"pans-fast", Shot, Note, nil, Camera,
		"the picture crosses its width so fast that it may judder",
		"At 24 frames a second, what stands still should take 7 s or more to cross the picture (common " +
			"practice). A turn of less than 1.5 s reads as one quick move, and one that stays with somebody " +
			"hides it. Give the turn more time, or pan with somebody."},
	PlayLoses: {"play-loses", Shot, Warning, nil, Hand,
		"the play of the ring makes a pull miss its mark",
		"The focus follows only after the ring has turned through its play. A mark read from one side is " +
			"wrong from the other by that much. Mark each distance from both sides, or come to it from the side " +
			"from which you read it."},
	RacksOverlap: {"racks-overlap", Shot, Error, nil, Hand,
		"the focus has to be in two places at once",
		"A rack starts before the one above it has landed. Start it later, or make the first one shorter."},
	ReGrip: {"re-grip", Shot, Note, nil, Hand,
		"one grip cannot turn the wheel that far",
		"The puller must let go and take hold again, which costs time and certainty. Use a faster gear, or " +
			"agree where in the move to re-grip."},
	Removed: {"removed", Shot, Note, nil, Hand,
		"the cut does not show these moves",
		"They still say where the focus is when the next move starts, and count for nothing else. Nothing is " +
			"checked of them, and exports have no marker for them."},
	Restless: {"restless", Shot, Note, nil, Sharp,
		"the focus goes back and forth more often than it rests",
		"The focus goes back to where it was one or two racks before, after rests under 1.5 s. It does so more " +
			"often than it takes longer rests. That is common practice, no source. The audience looks at the " +
			"focus, not at the people. Rest longer where it matters, leave racks out, or hold both."},
	RingUnknown: {"ring-unknown", Shot, Warning, nil, Hand,
		"nothing says how far the ring of the lens turns",
		"How far a ring turns decides how well a hand lands. Without it Pullscore gives no degrees and draws no " +
			"tape, and each chance is a range over rings of 60 to 320 degrees. Measure the ring with a strip of " +
			"paper, and write ring 300 deg, or girth and marks, into the lens."},
	RoughMark: {"rough-mark", Shot, Note, nil, Hand,
		"a mark is good enough if set by eye, and not as printed",
		"The printed tape is only as good as the marks it comes from. Rehearse, and move this mark to where " +
			"the picture is sharp. Or measure a mark at this distance."},
	RunsInto: {"runs-into", Shot, Error, nil, Distance,
		"the camera and someone would meet",
		"The two moves together leave no space between the lens and the person. A distance counts from where " +
			"the camera is at that time. Stop any such move in rehearsal, and leave room for the lens and the rig."},
	SeesCamera: {"sees-camera", Shot, Warning, nil, NoRow,
		"a camera that runs with another is in its picture",
		"The sensor mark of the one lies within what the other sees. Its crew and its stand take more room than " +
			"that mark, so keep well clear. Move one of the two, or take a lens that sees less."},
	SeveralTakes: {"several-takes", Shot, Note, nil, NoRow,
		"the cut shows parts of more than one take",
		"Focus and marks must match where one take follows the other. Times count on the clock of the take " +
			"with the most frames."},
	ShotNotInEdit: {"shot-not-in-edit", Shot, Warning, nil, Lines,
		"the cut has no clip with the ID of this shot",
		"The shot keeps the times of the plan. A clip is found by its name or reel: the ID, maybe with a take " +
			"behind it. Ask whether the shot was cut, or name its clip under the shot."},
	Slant: {"slant", Shot, Note, nil, Distance,
		"the tape was read at an angle, and it makes a difference",
		"The lens focuses on a plane, and a person to the side is nearer to it than the tape says. Set the " +
			"second distance of the message, not the one on the tape."},
	Slips: {"slips", Shot, Warning, nil, Hand,
		"the rack lands against an end of the ring that slips",
		"Such a ring turns on past its end, and then every mark on it has moved. Stop at the mark and not at " +
			"the end. Check the tape after each take."},
	SpeakerDiffers: {"speaker-differs", Shot, Note, nil, NoRow,
		"the subtitles name other speakers than the plan",
		"Every line that is found under a name has another name in the plan. Lines are found by their words, so " +
			"their times hold. Two lines of the same words are told apart by name, though: give the people of the " +
			"plan the names that the subtitles have. Or check that the file is of this film."},
	SpeedLight: {"speed-light", Shot, Note, nil, NoRow,
		"at this frame rate each frame gets more or less light",
		"The exposure of a frame changes with the frames a second. Read the meter at the speed that you " +
			"shoot."},
	SpeedSound: {"speed-sound", Shot, Warning, nil, Lines,
		"a line is spoken in a shot that runs at another speed",
		"On the screen such a line is not in step with its mouth. The words still give the hand its cues on " +
			"set. Leave the line out of the sound, or shoot it at the rate of the film."},
	StopClosesInZoom: {"stop-closes-in-zoom", Shot, Warning, nil, Sharp,
		"the lens closes its stop while it zooms",
		"The picture gets darker, and the depth of field changes, in the middle of the shot. Set the stop " +
			"that the long end still has."},
	StopNotOnLens: {"stop-not-on-lens", Shot, Error, nil, NoRow,
		"the lens does not have this stop",
		"The shot asks for a stop wider or smaller than the lens has. Choose a stop in its range, or another " +
			"lens."},
	TakesGuessed: {"takes-guessed", Shot, Note, nil, NoRow,
		"takes are told apart by their source alone",
		"Clips of one name whose source lies far apart are taken for different takes. Name the takes, with " +
			"clip and take under the shot, or name a list of clips."},
	TapeDiffers: {"tape-differs", Shot, Warning, nil, Distance,
		"a tape that was read does not agree with the places on the floor",
		"It is off by more than 5 cm and by more than 3 % (common practice, no source). The focus goes by the " +
			"tape and the picture by the floor, so one of them is wrong. Tape again, or correct the mark or the " +
			"place of the camera."},
	TooDeep: {"too-deep", Shot, Warning, nil, Sharp,
		"no focus setting keeps the whole depth of a subject sharp",
		"Part of the person or thing will be soft even on a perfect mark. Stop down, or choose what must be " +
			"sharp and make that the subject."},
	Trimmed: {"trimmed", Shot, Warning, nil, Hand,
		"the cut does not show all of a rack",
		"The move may be unreadable, or not needed at all. Ask the editor for more frames, or leave the rack " +
			"out."},
	TwoPulls: {"two-pulls", Shot, Warning, nil, Hand,
		"one puller has two pulls at once, with cameras that run together",
		"Nobody turns two rings at once. Name a second puller for one of the cameras, or let one of the pulls " +
			"wait for the other."},
	Unmotivated: {"unmotivated", Shot, Warning, nil, Lines,
		"nothing asks for the rack",
		"A rack that no word or cue asks for has no cue for the puller, and often none for the audience. " +
			"Start it on a word or a cue, or add because and the reason."},

	// A script page beside the plan.
	LineChanged: {"line-changed", Page, Warning, nil, Lines,
		"the script page has the line in other words",
		"A rack may start on a word that nobody will say any more. Take the new words over, and check each " +
			"move that starts on the old ones."},
	LineGone: {"line-gone", Page, Warning, nil, Lines,
		"the script page no longer has the line",
		"Racks that start on this line lose their cue. Delete the line and find them another cue, or ask " +
			"whether the page is right."},
	LineMoved: {"line-moved", Page, Warning, nil, Lines,
		"the script page has the line in another place",
		"The order of lines decides when every rack starts. Move the line in the plan, and check the moves " +
			"around it."},
	LineNew: {"line-new", Page, Note, nil, Lines,
		"the script page has a speech that the plan does not have",
		"All later lines come later than the plan says. Add the line if the shot shows or hears it."},
	SpeakerChanged: {"speaker-changed", Page, Warning, nil, Lines,
		"the script page gives the line to somebody else",
		"The focus may have to be on another person. Change the name in the plan, and check the racks around " +
			"the line."},
}
