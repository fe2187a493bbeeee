// Package check holds what all checks share: a built shot as they see it, a finding,
// and the changes that several of them offer as cures.
//
// shot.go has them all.
package check
