#!/usr/bin/env bash
# Sets up, builds and runs every test; ends with the runner's summary.
#   tests/run.sh [CTEST ARGUMENT...]     for example: tests/run.sh -R moisture
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

bash src/build.sh
ctest --test-dir build --output-on-failure --no-tests=error -j2 "$@"
