// Package inwords writes numbers in the words of a message.
//
// words.go writes lengths, times, angles and counts, and rounds what a cure
// proposes.
package inwords
