#!/usr/bin/env bash
# Brings the system packages that SectionScan needs and a bare Debian or Ubuntu lacks; on other systems it says what to install.
# Usage: src/system-packages.sh [--tests] [--browser]
set -euo pipefail

usage() {
    cat <<'TEXT'
Usage: src/system-packages.sh [--tests] [--browser]

Installs what SectionScan needs from the system and does nothing when it is all there.
  (nothing)   the libraries that OpenCV's native part loads: GTK 3 and its companions
  --tests     also the independent readers that the tests check drawings with
              (PDF: poppler, SVG: librsvg and Chromium, DXF: ezdxf, geometry: shapely, STL: admesh, glTF and OBJ: assimp),
              and the encoder of HEIC photos
  --browser   also Chromium alone, for the browser tests

Exit codes: 0 all there; 1 something is missing and could not be installed; 2 wrong usage.
TEXT
}

with_tests=false
with_browser=false
for argument in "$@"; do
    case "$argument" in
        --tests) with_tests=true ;;
        --browser) with_browser=true ;;
        -h | --help) usage; exit 0 ;;
        *) echo "system-packages: unknown option '$argument'." >&2; usage >&2; exit 2 ;;
    esac
done

say() { echo "system-packages: $*"; }
fail() { echo "system-packages: $*" >&2; exit 1; }

case "$(uname -s)" in
    Linux) ;;
    Darwin)
        say "macOS: nothing to install, OpenCV comes with the NuGet package (Apple silicon)."
        if $with_tests; then say "For the tests: brew install poppler librsvg admesh assimp libheif && pip3 install ezdxf shapely"; fi
        if $with_browser; then say "For the browser tests: brew install --cask chromium"; fi
        exit 0 ;;
    MINGW* | MSYS* | CYGWIN*)
        say "Windows: OpenCV comes with the NuGet package. Should it not load, install the Visual C++ 2015-2022 redistributable (x64);"
        say "Windows N and Server also need the Media Feature Pack (Server: the Media Foundation feature)."
        exit 0 ;;
    *) fail "$(uname -s) is not a system that OpenCV's native part is built for. Use Linux (x86-64), Windows or macOS." ;;
esac
[ "$(uname -m)" = x86_64 ] || fail "OpenCV's native part is built for x86-64 Linux; this machine is $(uname -m). Use an x86-64 machine."

# Every shared library that libOpenCvSharpExtern.so names (readelf -d), with its package in Debian 12. What these load in turn
# comes with their packages. Debian 13 and Ubuntu 24.04 renamed some of the packages: NAMEt64.
library_packages='
libfreetype.so.6        libfreetype6
libharfbuzz.so.0        libharfbuzz0b
libgtk-3.so.0           libgtk-3-0
libgdk-3.so.0           libgtk-3-0
libpangocairo-1.0.so.0  libpangocairo-1.0-0
libpango-1.0.so.0       libpango-1.0-0
libatk-1.0.so.0         libatk1.0-0
libcairo-gobject.so.2   libcairo-gobject2
libcairo.so.2           libcairo2
libgdk_pixbuf-2.0.so.0  libgdk-pixbuf-2.0-0
libgio-2.0.so.0         libglib2.0-0
libgobject-2.0.so.0     libglib2.0-0
libglib-2.0.so.0        libglib2.0-0
libdrm.so.2             libdrm2
libatomic.so.1          libatomic1
libX11.so.6             libx11-6
libstdc++.so.6          libstdc++6
libgcc_s.so.1           libgcc-s1
'

# The native library, once a build has fetched it: then `ldd` is asked, which also sees what the table above cannot know.
native_library() {
    local repository
    repository="$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)"
    local version
    version="$(sed -n 's/.*OpenCvSharp4\.official\.runtime\.linux-x64" Version="\([^"]*\)".*/\1/p' "$repository/src/Directory.Packages.props")"
    local package="${NUGET_PACKAGES:-${HOME:-/nonexistent}/.nuget/packages}/opencvsharp4.official.runtime.linux-x64/$version"
    find "$package" -name libOpenCvSharpExtern.so -print -quit 2>/dev/null || true
}

missing_libraries() {
    local native
    native="$(native_library)"
    if [ -n "$native" ]; then
        ldd "$native" | awk '/not found/ { print $1 }' | sort -u
    else
        local known
        known="$(PATH="$PATH:/sbin:/usr/sbin" ldconfig -p)"
        echo "$library_packages" | while read -r library _; do
            [ -z "$library" ] || grep -qF "$library " <<<"$known" || echo "$library"
        done
    fi
}

# One line per missing thing: package, a tab, why it is needed.
missing_packages() {
    local library package
    missing_libraries | while read -r library; do
        package="$(awk -v library="$library" '$1 == library { print $2 }' <<<"$library_packages")"
        printf '%s\tOpenCV loads %s\n' "${package:-?}" "$library"
    done
    if $with_tests; then
        command -v pdftoppm >/dev/null || printf 'poppler-utils\tthe tests rasterise PDF sheets with it\n'
        command -v heif-enc >/dev/null || printf 'libheif-examples\tthe tests make HEIC photos with it\n'
        command -v rsvg-convert >/dev/null || printf 'librsvg2-bin\tthe tests rasterise SVG drawings with it\n'
        command -v admesh >/dev/null || printf 'admesh\tthe tests check solids with it\n'
        command -v assimp >/dev/null || printf 'assimp-utils\tthe tests read solids for viewing with it\n'
        # The system's own Python: one from elsewhere on the PATH does not see Debian's modules.
        /usr/bin/python3 -c 'import ezdxf' 2>/dev/null || printf 'python3-ezdxf\tthe tests read DXF drawings with it\n'
        /usr/bin/python3 -c 'import shapely' 2>/dev/null || printf 'python3-shapely\tthe tests check areas and distances with it\n'
    fi
    if $with_browser || $with_tests; then
        command -v chromium >/dev/null || printf 'chromium\tthe tests measure SVG drawings in it and drive pages with it\n'
    fi
}

missing="$(missing_packages)"
if [ -z "$missing" ]; then
    say "everything needed is installed."
    exit 0
fi

echo "SectionScan needs system packages that are not installed yet:"
awk -F '\t' '!seen[$1]++ { printf "  %-20s %s\n", $1, $2 }' <<<"$missing" | sort

if ! command -v apt-get >/dev/null; then
    echo "This is not Debian or Ubuntu, so install them yourself:" >&2
    echo "  Fedora, RHEL:  sudo dnf install gtk3 libdrm libatomic" >&2
    echo "  Arch:          sudo pacman -S gtk3 libdrm gcc-libs" >&2
    echo "  openSUSE:      sudo zypper install libgtk-3-0 libdrm2 libatomic1" >&2
    if $with_tests; then echo "  for the tests: poppler (utils), librsvg (tools), admesh, assimp, libheif (heif-enc), and the Python modules ezdxf and shapely for /usr/bin/python3" >&2; fi
    if $with_browser; then echo "  for the browser tests: chromium" >&2; fi
    fail "packages are missing."
fi
if grep -q '^?' <<<"$missing"; then
    fail "OpenCV loads a library that no package is known for. Find it with 'apt-file search NAME' and install that package."
fi

as_root=()
if [ "$(id -u)" -ne 0 ]; then
    if command -v sudo >/dev/null && { [ -t 0 ] || sudo -n true 2>/dev/null; }; then
        as_root=(sudo)
    else
        fail "installing takes root. Ask the administrator to run, in this folder: bash src/system-packages.sh $*"
    fi
fi

log="$(mktemp)"
trap 'rm -f "$log"' EXIT
quietly() {
    ${as_root[@]+"${as_root[@]}"} env DEBIAN_FRONTEND=noninteractive "$@" </dev/null >>"$log" 2>&1
}
apt_options=(-qq -o DPkg::Lock::Timeout=300 -o Acquire::Retries=3)

echo "Installing them with apt-get${as_root:+ (sudo)}; this takes a minute or two ..."
# A foreign package source that is down must not stop the install: whether the packages are there is seen below.
quietly apt-get "${apt_options[@]}" update || say "apt-get update reported a problem; going on with the package lists at hand."

packages=()
while read -r name; do
    if ! apt-cache show --no-all-versions "$name" >/dev/null 2>&1 && apt-cache show --no-all-versions "${name}t64" >/dev/null 2>&1; then
        name="${name}t64"
    fi
    packages+=("$name")
done <<<"$(cut -f1 <<<"$missing" | sort -u)"

if ! quietly apt-get "${apt_options[@]}" install -y --no-install-recommends "${packages[@]}"; then
    cat "$log" >&2
    fail "apt-get could not install: ${packages[*]}. See its messages above; once they are dealt with, run this again."
fi

still_missing="$(missing_packages)"
if [ -n "$still_missing" ]; then
    echo "$still_missing" >&2
    fail "still missing after the install (package, reason: above)."
fi
say "installed ${#packages[@]} packages; everything needed is there."
