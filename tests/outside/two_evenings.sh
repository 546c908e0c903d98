#!/bin/sh
# A plan, a late coat and a skipped step in the log, and a later plan that keeps to the first.
# usage: two_evenings.sh PROGRAM JOB_FOLDER: leaves first and later .ics and .json in a copy of the
# folder, which it names.
set -e
program=$1
cp -r "$2" "$3"
cd "$3"
job=hall_bench.json
"$program" plan $job --json first.json --calendar first.ics >/dev/null
"$program" log done $job --batch "seat and shelf" --step sand-p220 --at 20:00 --now 2027-04-08T20:10
"$program" log coat $job --batch "seat and shelf" --at 20:10 --used "4.4 fl oz" --now 2027-04-09T20:15
"$program" log skip $job --batch frame --step sand-p120 --now 2027-04-09T20:20
"$program" plan $job --now 2027-04-09T20:30 --last-plan first.json --json later.json --calendar later.ics >/dev/null
