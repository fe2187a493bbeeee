// Package names says what names and expressions mean.
//
// scope.go gathers what files declare, and reports what is wrong with names;
// alike.go tells letters of two scripts apart; unit.go is a file with those that
// it uses; torn.go puts what is left of a line in the place of one that could not
// be read whole; clauses.go lays one statement over another, and
// notes what could not be read at all, so that it is not missed. eval.go computes
// expressions; lookup.go has the names of one shot, and reader.go reads what stands at
// one place of it; expand.go writes its moves out, and resolves their parameters.
// fill.go fills them into its texts; record.go notes which texts were names, for who asks. text.go quotes the plan and errors. Values are metres, seconds and degrees.
package names
