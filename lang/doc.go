// Package lang reads the plan language. It splits a file into tokens, parses it
// statement by statement, and formats it. It does not resolve names or compute
// anything; every value keeps its unit and its form in the file.
//
// Parse never fails. It returns everything that it could read, and every mistake
// with its place. A line that it cannot read becomes a *Bad in the tree.
//
// Each statement is a type of the tree, and its struct tags are its grammar
// (statements.go). participle builds the parser of a statement from the tags at the
// first such statement. A second reader turns the same tags into forms (form.go).
// From the forms come the explanation of a mistake (walk.go, explain.go), usage
// lines, the printed grammar (grammar.go) and completion (complete.go). What the tags
// cannot say of camera moves and of what goes with them is in movementrules.go, and
// what people write for them in movementslips.go. parts.go goes through the names,
// values and texts of a statement. amend.go writes a clause of a statement, and fix.go
// tries what is offered to mend a mistake. Five
// productions have parsers written by hand, through participle's Parseable: values,
// products, names, texts and moments. Offsets are bytes from 0. Lines and columns
// count from 1, columns in characters.
//
// REFERENCE.md, beside this file, is the reference of the language. Tests run its
// samples.
package lang
