// Units: the files that names come from.

package names

import "pullscore/lang"

// A Unit is one file and the files that it uses.
type Unit struct {
	File *lang.File // with what is left of lines that could not be read whole
	Torn Torn       // those
	Uses []Used
}

// A Used is a file that another uses, with the statement that says so.
type Used struct {
	Stmt *lang.Use
	Unit *Unit
}
