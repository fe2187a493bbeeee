// Package hand draws the band of the hand: how far it turns over time, and in what window
// it lands, in degrees at the hand. The score of one shot and the difference of two have it.
//
//   - hand.go: the band, its marks and the path of the hand
//   - landing.go: the windows in which it lands
package hand
