#!/bin/sh
# Set fitdoctor up beside the project and open it; `sh run.sh test` runs every check instead.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
cd "$here"
venv="$here/.venv"
say() { printf 'fitdoctor: %s\n' "$*"; }

need_python() {
    for python in python3 python3.13 python3.12 python3.11; do
        if command -v "$python" >/dev/null 2>&1 && "$python" -c 'import sys; sys.exit(sys.version_info < (3, 11))' 2>/dev/null; then
            return 0
        fi
    done
    say "Python 3.11 or later is needed. On Debian: sudo apt-get install python3 python3-venv"
    exit 1
}

as_root() {
    if [ "$(id -u)" = 0 ]; then "$@"; elif command -v sudo >/dev/null 2>&1 && sudo -n true 2>/dev/null; then sudo "$@"; else return 1; fi
}

# Libraries the window links against, and one font, by Debian package. Each is asked for by the file that proves it is there.
missing_libraries() {
    have=$(ldconfig -p 2>/dev/null || /sbin/ldconfig -p 2>/dev/null || true)
    while read -r package file; do
        case "$have" in *"$file"*) ;; *) printf '%s ' "$package" ;; esac
    done <<'LIST'
libgl1 libGL.so.1
libegl1 libEGL.so.1
libxkbcommon0 libxkbcommon.so.0
libdbus-1-3 libdbus-1.so.3
libfontconfig1 libfontconfig.so.1
libglib2.0-0 libglib-2.0.so.0
libgomp1 libgomp.so.1
libxcb-cursor0 libxcb-cursor.so.0
libxcb-icccm4 libxcb-icccm.so.4
libxcb-keysyms1 libxcb-keysyms.so.1
libxcb-shape0 libxcb-shape.so.0
libxkbcommon-x11-0 libxkbcommon-x11.so.0
LIST
    [ -d /usr/share/fonts/truetype/dejavu ] || [ -n "$(find /usr/share/fonts "$HOME/.fonts" -name '*.[to]tf' 2>/dev/null | head -n 1)" ] || printf 'fonts-dejavu-core '
}

install_libraries() {
    [ "$(uname -s)" = Linux ] || return 0
    wanted=$(missing_libraries)
    [ -n "$wanted" ] || return 0
    if ! command -v apt-get >/dev/null 2>&1; then
        say "these system libraries are missing; install them with your package manager: $wanted"
        return 0
    fi
    say "installing system libraries: $wanted"
    # shellcheck disable=SC2086
    as_root env DEBIAN_FRONTEND=noninteractive sh -c "apt-get update -qq && apt-get install -y -qq --no-install-recommends $wanted >/dev/null" ||
        say "could not install them here. Run this once: sudo apt-get install $wanted"
}

install_project() { # $1: extras such as [test]
    stamp="$venv/.fitdoctor$1"
    if [ -f "$stamp" ] && [ "$stamp" -nt pyproject.toml ]; then return 0; fi
    need_python
    [ -x "$venv/bin/python" ] || { say "making a virtual environment in .venv"; "$python" -m venv "$venv"; }
    say "installing fitdoctor and what it needs (about 350 MB, some minutes the first time)"
    "$venv/bin/python" -m pip install --disable-pip-version-check --progress-bar on -q -e ".$1"
    touch "$stamp"
}

has_display() {
    case "$(uname -s)" in Linux) [ -n "${DISPLAY:-}${WAYLAND_DISPLAY:-}" ] ;; *) true ;; esac
}

run_tests() {
    install_libraries
    install_project '[test]'
    bin="$venv/bin"
    export QT_QPA_PLATFORM=offscreen
    say "spelling"; "$bin/codespell" fitdoctor knowledge tests README.md DEVELOPERS.md screenshots_policy.md
    say "lint"; "$bin/ruff" check fitdoctor tests
    say "types"; "$bin/mypy"
    say "knowledge"; "$bin/fitdoctor" check
    say "tests"; "$bin/python" -m pytest -n auto "$@"
}

if [ "${1:-}" = test ]; then
    shift
    run_tests "$@"
    exit 0
fi
install_libraries
install_project ''
if has_display; then
    exec "$venv/bin/fitdoctor" "$@"
fi
say "no display here, so the demo case is assessed in text instead; the window needs a desktop."
QT_QPA_PLATFORM=offscreen exec "$venv/bin/fitdoctor" demo --folder "${1:-$here}"
