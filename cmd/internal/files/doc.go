// Package files turns what was named on the command line into plan files, works
// on many of them at once, and writes files whole or not at all.
//
//   - expand.go: files and folders that were named, as plan files
//   - in_order.go: work on several processors, its results in order
//   - name.go: names of files that are written, from names in plans
//   - write.go: a file replaced in one step or left as it was
package files
