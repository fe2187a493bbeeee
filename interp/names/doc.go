// Package names says what names and expressions mean.
//
// scope.go gathers what files declare, and reports what is wrong with names;
// unit.go is a file with those that it uses; clauses.go lays one statement over
// another. eval.go computes expressions; lookup.go resolves the names of one
// shot; expand.go writes its moves out, and resolves their parameters; torn.go
// takes what is left of a line that could not be read whole. text.go quotes the
// plan and errors. Values are metres, seconds and degrees.
package names
