# Timing, medians and ratios for tests/bench/run. Sourced by it.
# shellcheck shell=bash

microseconds() { echo $((${EPOCHREALTIME/[.,]/})); }

# timed SERIES COMMAND...: runs it, appending its microseconds to SERIES.time, the peak resident
# kilobytes to SERIES.rss and the processor seconds of all its threads to SERIES.cpu. Output goes to
# SERIES.out; a failure ends the run.
timed() {
  local series=$1 began
  shift
  began=$(microseconds)
  /usr/bin/time -q -o "$series.peak" -f '%M %U %S' "$@" >"$series.out" 2>"$series.err" </dev/null || {
    echo "tests/bench/run: this failed: $*" >&2
    tail -n 5 "$series.err" >&2
    exit 3
  }
  echo $(($(microseconds) - began)) >>"$series.time"
  awk '{ print $1 }' "$series.peak" >>"$series.rss"
  awk '{ print $2 + $3 }' "$series.peak" >>"$series.cpu"
}

# median FILE: of numbers, one a line (the lower middle one).
median() { sort -n "$1" | awk '{ v[NR] = $1 } END { print v[int((NR + 1) / 2)] }'; }
highest() { sort -n "$1" | tail -n 1; }

# ratio A B: A / B with two or three digits.
# `none` where either was not measured.
ratio() {
  awk -v a="$1" -v b="$2" 'BEGIN {
    if (a + 0 <= 0 || b + 0 <= 0) { printf "none"; exit }
    r = a / b; printf(r < 0.1 ? "%.4f" : r < 10 ? "%.3f" : "%.1f", r)
  }'
}

# The file that `result` and `note` add lines to.
table=/dev/stdout

# result WORK RATIO at-least|at-most GOAL: one line of the table.
result() {
  local met
  met=$(awk -v r="$2" -v g="$4" -v k="$3" 'BEGIN {
    if (r + 0 <= 0) print "not measured"
    else print ((k == "at-least" ? r + 0 >= g + 0 : r + 0 <= g + 0) ? "met" : "missed")
  }')
  printf '%-66s %9s  %-8s %-7s %s\n' "$1" "$2" "${3/-/ }" "$4" "$met" >>"$table"
}
# note WORK RATIO: a line without a goal.
note() { printf '%-66s %9s\n' "$1" "$2" >>"$table"; }
