// The speed of a whole film, and where its time goes: see cmd/internal/dev/speed
// for what a user waits.

package main

import (
	"io"
	"strings"
	"testing"

	"pullscore/cmd/internal/testing/film"
)

func BenchmarkCheckFilm(b *testing.B) {
	dir := b.TempDir()
	if _, err := film.Write(dir, 1, film.Scenes); err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		if code := run([]string{"check", dir}, strings.NewReader(""), io.Discard, io.Discard); code != exitFine {
			b.Fatalf("exit code %d", code)
		}
	}
	b.ReportMetric(float64(film.Scenes*film.LinesPerScene)*float64(b.N)/b.Elapsed().Seconds(), "lines/s")
}
