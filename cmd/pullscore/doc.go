// Pullscore reads focus plans, says what in them is likely to fail on the
// day, and draws them.
//
// Each command has a file of its own. What they promise to scripts: names of
// flags and fields stay; the exit code is 0 where all is well, 1 where a plan
// has errors (or a file is not laid out as fmt would), 2 where the command was
// not understood or a file could not be read or written.
//
//   - main.go: the start, and the exit code
//   - commandline.go: the parser of the command line
//   - choices.go: what flags can be, from the tables that hold it
//   - session.go: reading plans, and what is printed where
//   - asked.go: plans that a command answers about
//   - backends.go: the forms in which drawings are written
//   - brief.go: pullscore brief
//   - check.go: pullscore check
//   - click.go: pullscore click
//   - completion.go: pullscore completion
//   - coverage.go: pullscore coverage
//   - diff.go: pullscore diff
//   - diff_bind.go: all changed shots in one PDF file
//   - diff_draw.go: the drawings of pullscore diff
//   - deps.go: the flag --deps, a Make rule of what a run wrote and read
//   - draw.go: pullscore draw
//   - drawings.go: the drawings that can be asked for, by name
//   - fontflag.go: the flag --font, for letters that the embedded fonts lack
//   - export.go: pullscore export
//   - fmt.go: pullscore fmt
//   - help.go: pullscore help
//   - lens.go: pullscore lens
//   - lens_from.go: pullscore lens --from
//   - list.go: pullscore list
//   - lsp.go: pullscore lsp
//   - new.go: pullscore new, and the files that it writes in starter
//   - output.go: where drawings go, and the names of their files
//   - page.go: pullscore page
//   - page_against.go: page --against
//   - page_kit.go: the kit of a new plan
//   - page_talk.go: a plan of what subtitles say
//   - page_read.go: reading a script page, and telling what is none
//   - page_revised.go: page --revised
//   - primer.go: the language in a minute, and its words by task
//   - printed.go: pages that a command writes to standard output
//   - sheaf.go: the drawings of many shots in one PDF file
//   - sheets.go: the pages of drawings on their way into files
//   - stops.go: pullscore stops
//   - story.go: pullscore story
//   - takes.go: pullscore takes
//   - takes_predicted.go: pullscore takes --predicted
//   - takes_against.go: pullscore takes --against, the takes that a cut uses
//   - takes_recorded.go: pullscore takes --recorded; takes_unplanned.go the same without a plan,
//     takes_place.go where such a recording lies
//   - topics.go: help on a task
//   - version.go: pullscore version
//   - words.go: what a shell offers while a command line is typed
//   - watch.go: pullscore watch
//   - watch_code.go: the address of the live page as a code to point a phone at
//   - watch_log.go: what watch prints
package main
