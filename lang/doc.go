// Package lang reads the plan language: it cuts a file into tokens, parses it
// statement by statement, and lays it out anew. It resolves no names and
// computes nothing; every value stays as it was written, with its unit.
//
// Parse never fails: it returns what could be read together with every mistake,
// each with its place. A line that cannot be read is a *Bad in the tree.
//
// Each statement is a type of the tree whose struct tags are its grammar
// (statements.go); participle builds the parser of a statement from them when
// the first such statement comes. The same tags are read a second time as forms
// (form.go): from these come the explanation of a mistake (walk.go, explain.go),
// usage lines, the printed grammar (grammar.go) and what may come next
// (complete.go). Five productions are read by hand, behind participle's
// Parseable: values, products, names, texts, and moments, which share a parser.
// Offsets are bytes from 0, lines and columns count from 1, columns in
// characters.
//
// REFERENCE.md, beside this file, is the language's reference. Its samples are
// run by the tests.
package lang
