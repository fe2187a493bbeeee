// Package lang reads the plan language: it cuts a file into tokens, parses it
// statement by statement, and lays it out anew. It resolves no names and
// computes nothing; every value stays as it was written, with its unit.
//
// Parse never fails: it returns what could be read together with every mistake,
// each with its place. A line that cannot be read is a *Bad in the tree.
//
// Each statement is a type of the tree and has a parser of its own, over
// participle's tokens. Plain and rare ones have their grammar in struct tags,
// from which participle builds the parser when the first such statement comes.
// Those that nearly every plan has, those whose clauses come in any order, and
// values, anchors and places are written by hand, as participle's Parseable.
// Offsets are bytes from 0, lines and columns count from 1, columns in
// characters.
//
// REFERENCE.md, beside this file, is the language's reference. Its samples are
// run by the tests.
package lang
