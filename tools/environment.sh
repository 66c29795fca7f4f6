#!/bin/sh
# Builds .venv aside and renames it when it is complete; does nothing while it is up to date.
# PYTHON names the Python to build with; without it the first good one found is taken.
set -eu
cd "$(dirname "$0")/.."

# What the environment was made from: another place or other packages make another environment.
key="$(cat pyproject.toml constraints.txt | cksum) $(pwd)"

up_to_date() {
    [ -f .venv/key ] && [ "$(sed -n 1p .venv/key)" = "$key" ] && .venv/bin/python -c '' || return 1
    [ -z "${PYTHON:-}" ] || [ "$(sed -n 2p .venv/key)" = "$PYTHON" ]
}
if up_to_date 2>/dev/null; then
    exit 0
fi

. tools/python.sh
if [ -z "$python" ]; then
    echo "$wanting" >&2
    exit 1
fi

echo "building .venv with $("$python" --version): about a minute, and the packages are fetched once"
rm -rf .venv.part
"$python" -m venv .venv.part
# Of the packages a tenth is ever used here: Python compiles that when it meets it.
install() {
    .venv.part/bin/python -m pip install --quiet --disable-pip-version-check --no-compile \
        --constraint constraints.txt "$@" && return
    echo 'the packages could not be installed; pip says why above (the first time needs a network)' >&2
    exit 1
}
install hatchling
install --no-build-isolation --editable '.[dev]'

# The programs in bin/ carry the path they were made under.
.venv.part/bin/python - <<'END'
from pathlib import Path

here = Path(".venv.part").resolve()
for program in Path(".venv.part/bin").iterdir():
    if program.is_symlink() or not program.is_file():
        continue
    written = program.read_bytes()
    moved = written.replace(bytes(here), bytes(here.with_name(".venv")))
    if moved != written and b"\0" not in written:
        program.write_bytes(moved)
END
printf '%s\n%s\n' "$key" "$python" > .venv.part/key
rm -rf .venv
mv .venv.part .venv
