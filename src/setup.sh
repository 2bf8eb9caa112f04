#!/usr/bin/env bash
# Installs the Debian or Ubuntu packages that the build and the tests need, where they are missing.
#   src/setup.sh [--browser | --all]     --browser: also what the checks of the reports in a browser need;
#                                        --all: that too, and the packages of the benchmarks and the code checks
# Quick, quiet and offline when everything is there. Without the right to use apt it prints the one line to run and exits 1.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

packages=(
    g++ cmake ninja-build
    libboost-dev libeigen3-dev libfmt-dev nlohmann-json3-dev libtomlplusplus-dev libcli11-dev
    catch2
)
packages_for_browser=(chromium poppler-utils fonts-dejavu-core)
# Node.js from elsewhere brings an npm of its own, which the Debian package would clash with.
if ! command -v node >/dev/null || ! command -v npm >/dev/null; then packages_for_browser+=(nodejs npm); fi
packages_for_all=(
    libbenchmark-dev
    clang clang-format clang-tidy shellcheck
)

with_browser=
case ${1:-} in
    '') ;;
    --browser) with_browser=1; packages+=("${packages_for_browser[@]}") ;;
    --all) with_browser=1; packages+=("${packages_for_browser[@]}" "${packages_for_all[@]}") ;;
    *) echo "usage: src/setup.sh [--browser | --all]" >&2; exit 2 ;;
esac

# The two libraries of the browser checks, at the versions and with the checksums of package-lock.json.
install_browser_libraries() {
    [[ -n $with_browser ]] || return 0
    local there=tests/browser/node_modules/.package-lock.json
    [[ ! -e $there || tests/browser/package-lock.json -nt $there ]] || return 0
    echo "setup: installing the libraries of the browser checks" >&2
    npm ci --prefix tests/browser --ignore-scripts --no-audit --no-fund --loglevel=error >&2
}

if ! command -v dpkg-query >/dev/null; then
    echo "setup: this system does not use Debian packages; what the build needs is called there: ${packages[*]}" >&2
    exit 0 # the packages may well be here under other names; the build will say what it cannot find
fi

installed=$(dpkg-query -W -f='${db:Status-Status} ${Package}\n' "${packages[@]}" 2>/dev/null || true)
missing=()
for package in "${packages[@]}"; do
    grep -qxF "installed $package" <<<"$installed" || missing+=("$package")
done
if (( ! ${#missing[@]} )); then
    install_browser_libraries
    exit 0
fi

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
install_browser_libraries
