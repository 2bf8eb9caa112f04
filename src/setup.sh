#!/usr/bin/env bash
# Installs the Debian or Ubuntu packages that the build and the tests need, where they are missing.
#   src/setup.sh [--reference] [--browser] [--house] [--all]
#     --reference: also the outside finite-element program that some tests ask, where the distribution has it
#     --browser: also what the checks of the reports in a browser need
#     --house: also what tests/house.sh holds the sources to their rules with
#     --all: also these three, and what the benchmarks need
# Quick, quiet and offline when everything is there. Without the right to use apt it prints the one line to run and exits 1.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

packages=(
    g++ cmake ninja-build
    libboost-dev libeigen3-dev libfmt-dev nlohmann-json3-dev libtomlplusplus-dev libcli11-dev libutf8proc-dev
    catch2
)
packages_for_browser=(chromium poppler-utils fonts-dejavu-core)
# Node.js from elsewhere brings an npm of its own, which the Debian package would clash with.
if ! command -v node >/dev/null || ! command -v npm >/dev/null; then packages_for_browser+=(nodejs npm); fi
packages_for_house=(clang clang-format clang-tidy shellcheck)
packages_for_all=(libbenchmark-dev)
# Debian 12 and Ubuntu have it, Debian 13 has not; without it its tests are counted as skipped.
packages_of_reference=(calculix-ccx)
optional=()

with_browser=
use_browser() { with_browser=1; packages+=("${packages_for_browser[@]}"); }
for option in "$@"; do
    case $option in
        --reference) optional=("${packages_of_reference[@]}") ;;
        --browser) use_browser ;;
        --house) packages+=("${packages_for_house[@]}") ;;
        --all)
            optional=("${packages_of_reference[@]}")
            use_browser
            packages+=("${packages_for_house[@]}" "${packages_for_all[@]}")
            ;;
        *) echo "usage: src/setup.sh [--reference] [--browser] [--house] [--all]" >&2; exit 2 ;;
    esac
done

# The two libraries of the browser checks, at the versions and with the checksums of package-lock.json.
install_browser_libraries() {
    [[ -n $with_browser ]] || return 0
    local there=tests/browser/node_modules/.package-lock.json
    [[ ! -e $there || tests/browser/package-lock.json -nt $there ]] || return 0
    echo "setup: installing the libraries of the browser checks" >&2
    # npm trusts what the system trusts: networks that look into traffic have a certificate of their own.
    local trusted=/etc/ssl/certs/ca-certificates.crt
    [[ -n ${NODE_EXTRA_CA_CERTS:-} || ! -r $trusted ]] || export NODE_EXTRA_CA_CERTS=$trusted
    npm ci --prefix tests/browser --ignore-scripts --no-audit --no-fund --loglevel=error >&2
}

if ! command -v dpkg-query >/dev/null; then
    echo "setup: this system does not use Debian packages; what the build needs is called there: ${packages[*]}" >&2
    exit 0 # the packages may well be here under other names; the build will say what it cannot find
fi

installed=$(dpkg-query -W -f='${db:Status-Status} ${Package}\n' "${packages[@]}" ${optional[@]+"${optional[@]}"} 2>/dev/null || true)
is_installed() { grep -qxF "installed $1" <<<"$installed"; }
# Read whole before it is searched: a pipe that closes early would count as a failure.
is_offered() { local policy; policy=$(LC_ALL=C apt-cache policy "$1" 2>/dev/null) && grep -q '^  Candidate: [^(]' <<<"$policy"; }
missing=()
for package in "${packages[@]}"; do
    is_installed "$package" || missing+=("$package")
done
# Where the lists of packages have been fetched and do not have it, there is nothing to look for.
wanted=()
for package in ${optional[@]+"${optional[@]}"}; do
    is_installed "$package" && continue
    if is_offered "$package" || ! compgen -G '/var/lib/apt/lists/*_Packages*' >/dev/null; then wanted+=("$package"); fi
done
if (( ${#missing[@]} + ${#wanted[@]} == 0 )); then
    install_browser_libraries
    exit 0
fi

apt=(apt-get -qq -o Dpkg::Use-Pty=0 -o DPkg::Lock::Timeout=300)
as_root=()
if (( EUID != 0 )); then
    # A password is asked for only where someone can type it.
    if command -v sudo >/dev/null && { sudo -n true 2>/dev/null || [[ -t 0 && -t 2 ]]; }; then
        as_root=(sudo)
    elif (( ${#missing[@]} == 0 )); then
        echo "setup: this user may not install ${wanted[*]}; the tests that ask it will be skipped" >&2
        install_browser_libraries
        exit 0
    else
        echo "setup: packages are missing and this user may not install them. Run once, as root:" >&2
        echo "    apt-get update && apt-get install --no-install-recommends ${missing[*]}" >&2
        exit 1
    fi
fi
run_as_root() { ${as_root[@]+"${as_root[@]}"} env DEBIAN_FRONTEND=noninteractive "$@" </dev/null; }

log=$(mktemp)
trap 'rm -f "$log"' EXIT
install() {
    echo "setup: installing $*" >&2
    run_as_root "${apt[@]}" install -y --no-install-recommends "$@" >"$log" 2>&1 && return
    tail -n 20 "$log" >&2
    echo "setup: could not install: $*" >&2
    return 1
}
# One unreachable source among several is no reason to stop: the install says whether a package is really out of reach.
run_as_root "${apt[@]}" update >"$log" 2>&1 || { echo "setup: apt-get update had trouble:" >&2; tail -n 5 "$log" >&2; }
if (( ${#missing[@]} )); then install "${missing[@]}" || exit 1; fi
for package in ${optional[@]+"${optional[@]}"}; do
    if is_installed "$package"; then continue; fi
    if ! is_offered "$package" || ! install "$package"; then
        echo "setup: $package cannot be had here; the tests that ask it will be skipped" >&2
    fi
done
install_browser_libraries
