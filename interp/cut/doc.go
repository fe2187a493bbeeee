// Package cut finds one shot in the files of a cut: its clips, its cues and its
// spoken lines.
//
// file.go is a file that a plan names; shot.go looks for the shot in lists, and
// says what is asked for; pieces.go lays its clips into the time of the shot, loose.go
// those whose place only their lines can tell; takes.go tells their takes apart;
// lines.go looks for its lines in subtitles, align.go gives their words the
// times of the subtitles, and placing.go those of the shot. Times are
// seconds from the shot's start where that is known, else those of the file.
package cut
