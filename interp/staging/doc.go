// Package staging computes how cameras stand to the people of a scene.
//
//   - axes.go: whom each line is said to, and the lines of action that follow
//   - views.go: on which side of a line a camera stands, and past which side of it
//     somebody looks
//   - blocked.go: who stands in the way of whom
//   - times.go: the times of shots and of their scene, and which shots run together
package staging
