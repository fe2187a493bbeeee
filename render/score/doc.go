// Package score draws one shot against time: who speaks, how far everyone is,
// what is sharp, what the hand does. It also draws two states of a shot over
// one another, by the same bands.
//
//   - score.go: the pages of a score
//   - leaf.go: sections stacked on a page, with the free room shared out
//   - curves.go: what the bands draw, sampled once for all of them
//   - head.go: title, ruler of time, columns of the pulls
//   - lines.go: the band of lines, cues and actions
//   - words.go: words set on a row, each at its time
//   - distance.go: the band of distances
//   - sharp.go: the band of sharpness
//   - hand.go: the band of the hand
//   - flags.go: numbers of pulls and flags of findings above the bands, and
//     the findings in words
//   - gutter.go: names before the bands
//   - pulls.go: the table of pulls
//   - key.go: the signs at the foot
//   - diff.go: a difference: two scores over the same times and scales
//   - diff_head.go: its title and what the two states are called
//   - diff_changes.go: its band of changes
//   - diff_lines.go: its band of lines
//   - diff_distance.go: its band of distances
//   - diff_hand.go: its band of the hand
//   - diff_curves.go: where a curve is not what it was
//   - diff_signs.go: the signs for what was and what is
//   - diff_table.go: its notes and its table of pulls
//   - diff_key.go: its signs at the foot
package score
