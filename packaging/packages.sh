# What Ringhold needs of Debian 12 and newer. Sourced by packaging/run and packaging/test.

build_packages=(
    g++ cmake ninja-build ccache pkg-config
    qt6-base-dev qt6-serialport-dev qt6-serialbus-dev qt6-svg-dev qt6-multimedia-dev
    qt6-tools-dev qt6-tools-dev-tools qt6-l10n-tools libqcustomplot-dev libqcustomplot2.1-qt6
    libgl-dev libsqlite3-dev libsqlitecpp-dev libspdlog-dev nlohmann-json3-dev libeigen3-dev libcli11-dev
    libhowardhinnant-date-dev tzdata fonts-vollkorn fonts-lato
)
test_packages=(
    mold libgtest-dev libgmock-dev libgsl-dev libbenchmark-dev libqt6test6 clang-format
    xvfb xdotool poppler-utils fonts-dejavu-core
)

# Prints those of its arguments that are not installed.
missing_packages() {
    local have
    have=$(dpkg-query -W -f '${db:Status-Abbrev}${Package}\n' "$@" 2>/dev/null | sed -n 's/^ii //p' | sort -u)
    printf '%s\n' "$@" | sort -u | comm -23 - <(printf '%s\n' "$have")
}

# Installs what is missing, by apt-get as root or through sudo; asks no network when nothing is.
ensure_packages() {
    if ! command -v dpkg-query >/dev/null; then
        echo "This is not a Debian system: going on with whatever is installed."
        return 0
    fi
    local missing as_root=()
    mapfile -t missing < <(missing_packages "$@")
    [ "${#missing[@]}" -gt 0 ] || return 0
    echo "Installing: ${missing[*]}"
    if [ "$(id -u)" -ne 0 ]; then
        if ! command -v sudo >/dev/null; then
            echo "Not root and no sudo. As root, run: apt-get install ${missing[*]}" >&2
            return 1
        fi
        as_root=(sudo)
    fi
    local apt=("${as_root[@]}" env DEBIAN_FRONTEND=noninteractive apt-get -qq -o Dpkg::Use-Pty=0)
    "${apt[@]}" update
    "${apt[@]}" install --yes --no-install-recommends "${missing[@]}"
}

# Configures once and builds a preset with two jobs; compiled objects are shared between clones through ccache.
build_preset() {
    export CCACHE_BASEDIR=$PWD CCACHE_NOHASHDIR=1
    local log
    log=$(mktemp)
    if [ ! -f "build/$1/build.ninja" ]; then
        echo "Configuring preset $1."
        cmake --preset "$1" >"$log" 2>&1 || { cat "$log" >&2; rm -f "$log"; return 1; }
    fi
    rm -f "$log"
    echo "Building preset $1."
    cmake --build --preset "$1" --parallel 2
}
