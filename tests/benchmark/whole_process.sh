#!/usr/bin/env bash
# Times whole runs of the program, start and exit included, and prints median and worst in milliseconds.
#   tests/benchmark/whole_process.sh [RUNS [DESIGN]]     50 runs of data/designs/boot-bench.toml
# Bash starts the process and reads the clock, which adds about a millisecond. Build first: src/build.sh
set -euo pipefail
export LC_ALL=C # EPOCHREALTIME has a decimal point
cd "$(dirname "${BASH_SOURCE[0]}")/../.."

runs=${1:-50}
design=${2:-data/designs/boot-bench.toml}
[[ $runs =~ ^[1-9][0-9]*$ ]] || { echo "usage: whole_process.sh [RUNS [DESIGN]]" >&2; exit 2; }
[[ -x build/jointwright ]] || { echo "build/jointwright is not there; run src/build.sh" >&2; exit 2; }

check_once() {
    local status=0
    build/jointwright check "$design" >/dev/null || status=$?
    (( status <= 1 )) || { echo "check ended with exit status $status" >&2; exit "$status"; }
}

check_once # brings program and design into the file cache
times=()
for (( i = 0; i < runs; i++ )); do
    start=${EPOCHREALTIME/./}
    check_once
    times+=($(( ${EPOCHREALTIME/./} - start )))
done

mapfile -t sorted < <(printf '%s\n' "${times[@]}" | sort -n)
in_ms() { printf '%d.%d' $(( $1 / 1000 )) $(( $1 % 1000 / 100 )); }
median=$(( (sorted[(runs - 1) / 2] + sorted[runs / 2]) / 2 ))
echo "check $design: median $(in_ms "$median") ms, worst $(in_ms "${sorted[runs - 1]}") ms, $runs runs"
