#!/bin/sh
# A step for the server that builds your repository: it fails where a plan has
# errors, and leaves the papers of the crew and what the branch changes for it.
#
#   ci.sh origin/main papers
#
# The first word is what the branch goes into, the second a folder to fill.
set -eu
into=${1:?what the branch goes into, as origin/main}
papers=${2:?a folder for the papers}
mkdir -p "$papers"

# What others show beside the lines of a change, and what people read.
status=0
pullscore check --as sarif . >"$papers/findings.sarif" || status=$?
[ "$status" -eq 0 ] || pullscore check . || exit "$status"

# Against where the branch began, so that what others did since is left out.
base=$(git merge-base "$into" HEAD)
pullscore diff "$base:./" . >"$papers/changes.txt" || [ $? -eq 1 ]
cat "$papers/changes.txt"
pullscore brief -o "$papers/brief.pdf" .
