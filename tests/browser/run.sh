#!/usr/bin/env bash
# Checks the HTML reports in a browser, where what that needs is installed; else says so and is done.
#   tests/browser/run.sh [DESIGN...]     for example: tests/browser/run.sh boot-bench
# After a build; bash src/setup.sh --browser (or --all) installs what it needs.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/../.."

missing=()
for command in node chromium pdftotext; do command -v "$command" >/dev/null || missing+=("$command"); done
for package in playwright-core axe-core; do [[ -d tests/browser/node_modules/$package ]] || missing+=("$package"); done
if (( ${#missing[@]} )); then
    echo "browser checks: SKIPPED, not installed: ${missing[*]} (bash src/setup.sh --browser installs what is missing)"
    exit 0
fi
node tests/browser/check.mjs build/jointwright data/designs "$@"
