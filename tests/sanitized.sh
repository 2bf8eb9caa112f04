#!/usr/bin/env bash
# Builds the program without optimisation and with the address and undefined-behaviour sanitizers, then runs it over every design and every starter.
# Unoptimised, since two unlike classes of one name go unnoticed where the compiler has put their functions in place. Ends with 1 where a run dies
# or a sanitizer has something to say.
#   tests/sanitized.sh [PROGRAM]     PROGRAM: one that is built already
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

program=${1:-build-debug/jointwright}
if (( $# == 0 )); then
    bash src/setup.sh >&2
    {
        cmake --preset debug
        cmake --build --preset debug --target jointwright
    } >&2
fi

export ASAN_OPTIONS=detect_leaks=1:detect_odr_violation=2 UBSAN_OPTIONS=halt_on_error=1:print_stacktrace=1
results=$(mktemp -d)
trap 'rm -rf "$results"' EXIT

# One run: its first words where it dies or complains. A status of 1 is a verdict, not a mishap; remedies repeat the same sums many times over.
one() {
    local status=0 said
    said=$("$1" check "$2" --format "$3" --remedies none 2>&1 >/dev/null) || status=$?
    (( status > 1 )) || [[ -n $said ]] || return 0
    printf '%s as %s ends with %d:\n%s\n' "$2" "$3" "$status" "${said:0:2000}" >"$4/$(basename "$2").$3"
}
export -f one

runs=()
for design in data/designs/*.toml data/patterns/*.toml; do runs+=("$design json"); done
for format in text markdown html; do runs+=("data/designs/nine-spindles-five-minute-glue.toml $format"); done
# shellcheck disable=SC2016 # the inner shell puts these in
printf '%s\n' "${runs[@]}" | xargs -P "$(nproc)" -L 1 bash -c 'one "$0" "$2" "$3" "$1"' "$program" "$results"

shopt -s nullglob
faults=("$results"/*)
(( ${#faults[@]} == 0 )) || cat "${faults[@]}" >&2
printf 'sanitized: %d runs, %d faults\n' "${#runs[@]}" "${#faults[@]}"
(( ${#faults[@]} == 0 ))
