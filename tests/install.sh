#!/usr/bin/env bash
# Installs what is built into an empty folder, builds the example of tests/install against it, and holds its answer against the program's own.
#   tests/install.sh [BUILD FOLDER]
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

build=${1:-build}
there=$(mktemp -d)
trap 'rm -rf "$there"' EXIT

cmake --install "$build" --prefix "$there/installed" >"$there/log"
cmake -S tests/install/example -B "$there/example" -DCMAKE_BUILD_TYPE=Release -DCMAKE_PREFIX_PATH="$there/installed" >>"$there/log"
cmake --build "$there/example" >>"$there/log" || { cat "$there/log" >&2; exit 1; }

compared=0
for design in data/designs/boot-bench.toml data/designs/cherry-top-glued.toml; do
    own=0 theirs=0
    "$there/installed/bin/jointwright" check "$design" --format json --remedies none >"$there/own.json" || own=$?
    "$there/example/check_a_design" "$design" >"$there/theirs.json" 2>"$there/verdict" || theirs=$?
    cmp "$there/own.json" "$there/theirs.json"
    (( own == theirs )) || { echo "install: $design ends with $own and with $theirs" >&2; exit 1; }
    echo "install: $design: $(cat "$there/verdict")"
    compared=$((compared + 1))
done
# Nothing that is installed knows where it was built.
if grep -rIl -e "$PWD" "$there/installed"; then echo "install: these files name the folder of the build" >&2; exit 1; fi
(cd "$there/installed" && find . -type f | sort)
echo "install: $compared designs answered alike"
