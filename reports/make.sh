#!/usr/bin/env bash
# Sets up, builds, checks every design in data/designs/ and writes its report to reports/ as HTML, text and JSON;
# prints the report of the boot bench at the end. Exit status 0 when every report was written, whatever its verdict.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

bash src/build.sh jointwright

declare -A ending=([html]=html [text]=txt [json]=json)
not_written=()
for design in data/designs/*.toml; do
    name=$(basename "$design" .toml)
    for format in html text json; do
        report=reports/$name.${ending[$format]}
        status=0
        build/jointwright check "$design" --format "$format" -o "$report" || status=$?
        # 1 says that a check failed: a verdict, not a mishap. From 2 on there is no report.
        (( status <= 1 )) && [[ -s $report ]] || not_written+=("$report (exit status $status)")
    done
done

if (( ${#not_written[@]} )); then
    printf 'not written: %s\n' "${not_written[@]}" >&2
    exit 1
fi
cat reports/boot-bench.txt
