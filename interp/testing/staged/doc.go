// Package staged makes plans with a scene that is staged, without the language: people on
// a floor, lines, cameras with racks, and cuts. Tests of what reads such plans change them
// as they like.
package staged
