# shellcheck shell=bash
# What app/run, tests/run and .ci/run share: the packages, the compiler cache, configure and build.
# It is sourced, never run. Everything it says goes to stderr, so that the output of a verb
# (`app/run answers --json > file`) stays clean.

rickyard_root=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd -P)

# The only list of packages. Names are those of Debian 12.
# libqt6opengl6-dev: the chart library's CMake files ask for it, qt6-base-dev only recommends it.
# libqt6sql6-sqlite: the driver, loaded at run time. tzdata: the yard's time zone.
# The fonts: the interface's own, and one with wide coverage for a machine that has none.
rickyard_build_packages=(
    cmake ninja-build g++ ccache
    qt6-base-dev qt6-charts-dev qt6-svg-dev qt6-multimedia-dev libqt6opengl6-dev libqt6sql6-sqlite
    libeigen3-dev libboost-math-dev libglpk-dev libical-dev
    tzdata fonts-inter fonts-dejavu-core
)
# Only for the tests: a second reader of calendars, so that what is written is not read by its writer
# alone.
rickyard_test_packages=(python3 python3-icalendar)
# Only for the checks of .ci/run.
rickyard_check_packages=(clang-format clang-tidy)

say() { printf 'rickyard: %s\n' "$*" >&2; }
stop() {
    say "$*"
    exit 1
}

# Names those of the given packages that are not installed, one a line.
missing_packages() {
    local package
    for package in "$@"; do
        [[ $(dpkg-query -W -f='${db:Status-Status}' "$package" 2>/dev/null) == installed ]] ||
            printf '%s\n' "$package"
    done
}

# Runs a command as root: directly, or through sudo.
as_root() {
    if [[ $EUID -eq 0 ]]; then
        env DEBIAN_FRONTEND=noninteractive "$@"
    else
        sudo env DEBIAN_FRONTEND=noninteractive "$@"
    fi
}

# Without apt nothing can be installed from here. The program may still build: go on if the tools
# are there, and let CMake name a library that is not.
without_apt() {
    local tool absent=()
    say 'this system has no apt, so nothing is installed for you.'
    say "Needed, by their Debian names: $*"
    for tool in cmake ninja; do
        command -v "$tool" >/dev/null || absent+=("$tool")
    done
    command -v c++ >/dev/null || command -v g++ >/dev/null || command -v clang++ >/dev/null ||
        absent+=('a C++20 compiler')
    ((${#absent[@]} == 0)) ||
        stop "Not found: ${absent[*]}. Install what is named above with your system's own tool," \
            'then run this again.'
}

install_packages() {
    local package known=() unknown=()
    say "these packages are missing and will be installed with apt: $*"
    if [[ $EUID -ne 0 ]]; then
        command -v sudo >/dev/null ||
            stop "that needs root, and there is no sudo here. As root, run: apt-get install $*"
        say 'sudo may ask for your password.'
    fi
    # A fresh machine has no package lists, an old one has stale lists: fetch them first.
    as_root apt-get -q -o DPkg::Lock::Timeout=300 update >&2 ||
        say 'the package lists could not be refreshed; trying with those that are here.'
    for package in "$@"; do
        if apt-cache show --no-all-versions "$package" >/dev/null 2>&1; then
            known+=("$package")
        else
            unknown+=("$package")
        fi
    done
    ((${#unknown[@]} == 0)) ||
        say "this distribution does not know ${unknown[*]} (names are those of Debian 12);" \
            'going on without.'
    ((${#known[@]} == 0)) ||
        as_root apt-get -q -y -o DPkg::Lock::Timeout=300 install --no-install-recommends \
            "${known[@]}" >&2 ||
        stop "apt could not install: ${known[*]}. Its own words are above. Nothing was built."
}

# ensure_packages BUILD_FOLDER PACKAGE...
# Once all are there, a stamp named after the list spares the next run even the question.
ensure_packages() {
    local folder=$1 missing hash
    shift
    hash=$(cksum <<<"$*")
    rickyard_stamp=$folder/.packages-${hash%% *}
    [[ -e $rickyard_stamp ]] && return
    if command -v apt-get >/dev/null && command -v dpkg-query >/dev/null; then
        mapfile -t missing < <(missing_packages "$@")
        ((${#missing[@]} == 0)) || install_packages "${missing[@]}"
    else
        without_apt "$@"
    fi
    mkdir -p "$folder"
    : >"$rickyard_stamp"
}

# ccache refuses precompiled headers unless told that their times and macros do not matter;
# relative paths let several clones share one cache.
use_compiler_cache() {
    export CCACHE_SLOPPINESS=pch_defines,time_macros,include_file_mtime,include_file_ctime
    export CCACHE_NOHASHDIR=1
    export CCACHE_BASEDIR=$rickyard_root
}

# A failed step may come from a package that was removed meanwhile: forget the stamp, so that the
# next run looks again.
failed() {
    rm -f "${rickyard_stamp:-}"
    stop "$*"
}

# configure FOLDER CMAKE_ARGUMENT...: only when the folder holds no finished configuration of this
# clone. Later changes to CMake files and new sources are noticed by ninja itself.
configure() {
    local folder=$1 home=
    shift
    if [[ -e $folder/build.ninja ]]; then
        home=$(sed -n 's/^CMAKE_HOME_DIRECTORY:INTERNAL=//p' "$folder/CMakeCache.txt" 2>/dev/null)
        [[ $home == "$rickyard_root" ]] && return
        say "${folder#"$rickyard_root"/} belongs to a clone at another place; configuring afresh."
    fi
    cmake --fresh -S "$rickyard_root" -B "$folder" -G Ninja "$@" >&2 ||
        failed "configuring failed; CMake's words are above. Needed, by their Debian names:" \
            "${rickyard_build_packages[*]}"
}

# build FOLDER [TARGET...]
build() {
    local folder=$1
    shift
    use_compiler_cache
    ninja -C "$folder" -j "$(nproc)" "$@" >&2 || failed 'the build failed; see above.'
}
