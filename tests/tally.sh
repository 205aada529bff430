# Counting passed and failed checks over several parts and programs. Sourced by the scripts in
# tests/; each part adds to one file, so that a part can be a program of its own.
# shellcheck shell=bash

# The file holds lines "passed failed"; an inherited one makes this script a part of its caller.
if [ -z "${RANGEBOOK_TALLY:-}" ]; then
  RANGEBOOK_TALLY=$(mktemp)
  export RANGEBOOK_TALLY
  trap 'rm -f "$RANGEBOOK_TALLY"' EXIT
  tally_is_mine=1
fi

# count PASSED FAILED
count() { printf '%s %s\n' "$1" "$2" >>"$RANGEBOOK_TALLY"; }

# check NAME COMMAND...: one check; its output is shown only when it fails.
check() {
  local name=$1 output
  shift
  if output=$("$@" 2>&1 </dev/null); then
    printf 'ok    %s\n' "$name"
    count 1 0
  else
    printf 'FAIL  %s\n' "$name"
    printf '%s\n' "$output" | sed 's/^/      /'
    count 0 1
  fi
}

# tests_of FILE: adds the counts of a ctest run whose output is in FILE; 1 failed if it has none.
count_ctest() {
  local line
  line=$(grep -E '^[0-9]+% tests passed, [0-9]+ tests? failed out of [0-9]+' "$1" | tail -n 1)
  if [[ $line =~ passed,\ ([0-9]+)\ tests?\ failed\ out\ of\ ([0-9]+) ]]; then
    count $((BASH_REMATCH[2] - BASH_REMATCH[1])) "${BASH_REMATCH[1]}"
  else
    count 0 1
  fi
}

# finish: the closing line, when this script is not a part of another; 1 if anything failed or
# nothing was checked at all.
finish() {
  local passed failed
  read -r passed failed < <(awk '{p += $1; f += $2} END {print p + 0, f + 0}' "$RANGEBOOK_TALLY")
  [ -z "${tally_is_mine:-}" ] || printf '\n%s passed, %s failed\n' "$passed" "$failed"
  [ "$failed" -eq 0 ] && [ "$passed" -gt 0 ]
}
