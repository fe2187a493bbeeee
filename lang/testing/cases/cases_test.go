package cases

import (
	"flag"
	"testing"

	"pgregory.net/rapid"
)

func count(t *testing.T, n int) (tried int) {
	Check(t, n, func(*rapid.T) { tried++ })
	return tried
}

func TestNumberOfCases(t *testing.T) {
	f := flag.Lookup("rapid.checks")
	usual := f.Value.String()
	if usual != f.DefValue {
		t.Skip("the command line names a number")
	}
	for _, n := range []int{3, 250} {
		if got := count(t, n); got != n {
			t.Errorf("%d cases, not %d", got, n)
		}
	}
	if got := f.Value.String(); got != usual {
		t.Errorf("afterwards properties are tried with %s cases, not %s", got, usual)
	}
	if err := flag.Set(f.Name, "7"); err != nil {
		t.Fatal(err)
	}
	defer flag.Set(f.Name, usual)
	if got := count(t, 3); got != 7 {
		t.Errorf("%d cases where the command line says 7", got)
	}
}
