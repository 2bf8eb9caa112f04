#!/usr/bin/env bash
# Sets up, builds, checks the reports in a browser where that is installed, and runs every test; ends with the runner's summary.
#   tests/run.sh [CTEST ARGUMENT...]     for example: tests/run.sh -R moisture, which leaves the browser out
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

bash src/build.sh
status=0
(( $# )) || bash tests/browser/run.sh || status=1
ctest --test-dir build --output-on-failure --no-tests=error -j2 "$@" || status=$?
exit "$status"
