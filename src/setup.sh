#!/usr/bin/env bash
# Installs the Debian or Ubuntu packages that the build and the tests need, where they are missing.
#   src/setup.sh [--all]     --all: also those of the benchmarks, the browser checks and the code checks
# Quick, quiet and offline when everything is there. Without the right to use apt it prints the one line to run and exits 1.
set -euo pipefail

packages=(
    g++ cmake ninja-build
    libboost-dev libeigen3-dev libfmt-dev nlohmann-json3-dev libtomlplusplus-dev libcli11-dev
    catch2
)
packages_for_all=(
    libbenchmark-dev
    chromium poppler-utils fonts-dejavu-core
    clang clang-format clang-tidy shellcheck
)

case ${1:-} in
    '') ;;
    --all) packages+=("${packages_for_all[@]}") ;;
    *) echo "usage: src/setup.sh [--all]" >&2; exit 2 ;;
esac

if ! command -v dpkg-query >/dev/null; then
    echo "setup: this system does not use Debian packages; what the build needs is called there: ${packages[*]}" >&2
    exit 0 # the packages may well be here under other names; the build will say what it cannot find
fi

installed=$(dpkg-query -W -f='${db:Status-Status} ${Package}\n' "${packages[@]}" 2>/dev/null || true)
missing=()
for package in "${packages[@]}"; do
    grep -qxF "installed $package" <<<"$installed" || missing+=("$package")
done
(( ${#missing[@]} )) || exit 0

apt=(apt-get -qq -o Dpkg::Use-Pty=0 -o DPkg::Lock::Timeout=300)
as_root=()
if (( EUID != 0 )); then
    # A password is asked for only where someone can type it.
    if command -v sudo >/dev/null && { sudo -n true 2>/dev/null || [[ -t 0 && -t 2 ]]; }; then
        as_root=(sudo)
    else
        echo "setup: packages are missing and this user may not install them. Run once, as root:" >&2
        echo "    apt-get update && apt-get install --no-install-recommends ${missing[*]}" >&2
        exit 1
    fi
fi
run_as_root() { ${as_root[@]+"${as_root[@]}"} env DEBIAN_FRONTEND=noninteractive "$@" </dev/null; }

echo "setup: installing ${missing[*]}" >&2
log=$(mktemp)
trap 'rm -f "$log"' EXIT
# One unreachable source among several is no reason to stop: the install says whether a package is really out of reach.
run_as_root "${apt[@]}" update >"$log" 2>&1 || { echo "setup: apt-get update had trouble:" >&2; tail -n 5 "$log" >&2; }
if ! run_as_root "${apt[@]}" install -y --no-install-recommends "${missing[@]}" >"$log" 2>&1; then
    tail -n 20 "$log" >&2
    echo "setup: could not install: ${missing[*]}" >&2
    exit 1
fi
