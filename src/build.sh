#!/usr/bin/env bash
# Sets up, then configures and builds into build/. The program is build/jointwright afterwards.
#   src/build.sh [TARGET...]     without targets everything, tests included
# Words about the build go to standard error, so that a caller's output stays its own.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

bash src/setup.sh

# A build folder made elsewhere (a copied checkout) or by another generator cannot be used again.
cache=build/CMakeCache.txt
if [[ -f $cache ]] && ! { grep -qxF "CMAKE_HOME_DIRECTORY:INTERNAL=$PWD" "$cache" && grep -qx 'CMAKE_GENERATOR:INTERNAL=Ninja' "$cache"; }; then
    rm -rf "$cache" build/CMakeFiles
fi

targets=()
(( $# == 0 )) || targets=(--target "$@")
{
    cmake -S . -B build -G Ninja -DCMAKE_BUILD_TYPE=Release
    cmake --build build ${targets[@]+"${targets[@]}"}
} >&2
