// Package load reads the files of a plan, each once and within limits.
//
// load.go follows what a plan uses, and keeps its files and those of other people;
// foreign.go opens those that a statement names, and tells what is wrong with them;
// cache.go keeps what they were parsed to; read.go has the options, the limits and the reading of one file.
package load
