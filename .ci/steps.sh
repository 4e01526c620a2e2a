# Read by the commands beside it: says what happens, and finds or installs what they stand on.
# Every function can be called again and does only what is not yet done.

step() { printf '\n== %s\n' "$*"; }

stop() {
    printf '\n%s\n' "$*" >&2
    exit 1
}

# Install Debian packages where that is possible; otherwise say what to install.
# A missing package list (a fresh container has none) is fetched first.
install_packages() {
    local as_root=()
    command -v apt-get >/dev/null || stop "Please install: $*"
    if [ "$(id -u)" != 0 ]; then
        command -v sudo >/dev/null || stop "Please run as root: apt-get install $*"
        as_root=(sudo)
        [ -t 0 ] || as_root+=(-n) # with nobody there to type it, do not ask for a password
    fi
    step "Installing $*"
    "${as_root[@]}" apt-get update -qq
    "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive \
        apt-get install -y -qq --no-install-recommends "$@" >/dev/null
}

# Set $python to a Python that is new enough.
find_python() {
    for python in python3 python3.14 python3.13 python3.12 python3.11; do
        if "$python" -c 'import sys; sys.exit(sys.version_info < (3, 11))' 2>/dev/null; then
            return
        fi
    done
    stop "cellarapp needs Python 3.11 or newer; the path holds none."
}

# Make .venv, or make it anew when it was left half made or was moved here from elsewhere.
make_venv() {
    find_python
    .venv/bin/python -m pip --version >/dev/null 2>&1 && return
    if ! "$python" -c 'import venv, ensurepip' 2>/dev/null; then
        install_packages "$("$python" -c \
            'import sys; print("python%d.%d-venv" % sys.version_info[:2])')"
    fi
    step "Making .venv with $("$python" --version)"
    "$python" -m venv --clear .venv
}

# Install cellarapp into .venv when anything has changed that decides what that would give:
# the folder's own place (a script in .venv names it), and the files that are named.
# Usage: install_cellarapp STAMP WHAT FILE...
install_cellarapp() {
    local stamp=".venv/$1" what="$2" now
    shift 2
    now="$(pwd; cksum "$@")"
    [ "$(cat "$stamp" 2>/dev/null)" != "$now" ] || return 0
    step "Installing cellarapp into .venv"
    .venv/bin/python -m pip install --quiet --disable-pip-version-check --editable "$what"
    printf '%s\n' "$now" >"$stamp"
}
