#!/usr/bin/env bash
# Writes reports/boot-bench.png, the first screen of the boot bench's report, for the README.
# After reports/make.sh; needs chromium (bash src/setup.sh --browser).
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

profile=$(mktemp -d)
trap 'rm -rf "$profile"' EXIT
root=()
(( EUID != 0 )) || root=(--no-sandbox) # the browser's own sandbox does not run as root
chromium --headless "${root[@]}" --disable-gpu --no-first-run --hide-scrollbars --user-data-dir="$profile" \
    --window-size=1040,938 --screenshot="$PWD/reports/boot-bench.png" "file://$PWD/reports/boot-bench.html" 2>"$profile/log" ||
    { tail -n 5 "$profile/log" >&2; exit 1; }
