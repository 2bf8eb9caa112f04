#!/usr/bin/env bash
# Holds the sources to the rules that no compiler of the build sees: layout, shell scripts, headers that compile alone, clang++ without a warning.
# What is not installed is said and left out; `bash src/setup.sh --all` installs it.
#   tests/house.sh [--quick|--all]     --quick: leaves clang++ and the headers out; --all: clang++ compiles the tests too
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

status=0
rule() { printf 'house: %s\n' "$1" >&2; }
missing() { command -v "$1" >/dev/null && return 1; rule "$1 is not installed: $2 is left out"; }
mapfile -t sources < <(find src tests -name '*.cpp' -not -path '*/node_modules/*' | sort)
mapfile -t headers < <(find src -name '*.hpp' | sort)
mapfile -t scripts < <(find src tests reports .ci -name '*.sh' -not -path '*/node_modules/*' | sort)

rule "layout by clang-format"
missing clang-format "the layout" || clang-format --dry-run --Werror "${sources[@]}" "${headers[@]}" || status=1

rule "shell scripts by shellcheck"
missing shellcheck "the shell scripts" || shellcheck "${scripts[@]}" .ci/run || status=1

if [[ ${1:-} == --quick ]]; then exit "$status"; fi

# The words of the build's own commands, without the precompiled header: what a file forgets to include shows.
eigen=$(pkg-config --variable=pc_sysrootdir eigen3 2>/dev/null || true)/usr/include/eigen3
words=(-std=c++20 -DNDEBUG -DJOINTWRIGHT_VERSION='"0"' -DTOML_HEADER_ONLY=0 -Isrc -Itests -isystem "$eigen"
    -Wall -Wextra -Wpedantic -Wconversion -Werror -fsyntax-only
    -DJOINTWRIGHT_DATA_DIR='"data"' -DJOINTWRIGHT_PROGRAM='"jointwright"')

rule "${#headers[@]} headers, each alone"
printf '%s\n' "${headers[@]}" | xargs -P "$(nproc)" -I '{}' g++ "${words[@]}" -include '{}' -x c++ /dev/null || status=1

compiled='^src/'
[[ ${1:-} == --all ]] && compiled='^(src|tests/[^b])'
mapfile -t compiled_by_clang < <(printf '%s\n' "${sources[@]}" | grep -E "$compiled")
rule "${#compiled_by_clang[@]} sources by clang++"
missing clang++ "clang++" ||
    printf '%s\n' "${compiled_by_clang[@]}" | xargs -P "$(nproc)" -n 4 clang++ "${words[@]}" || status=1

exit "$status"
