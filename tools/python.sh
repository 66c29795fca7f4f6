# Sourced: sets `python` to a Python >= 3.11 that can build environments, or leaves it empty and says
# in `wanting` what is missing and the one line that brings it.
python=''
wanting='no Python 3.11 or newer found; Debian: apt-get install python3 python3-venv
Another one is named with: make PYTHON=/path/to/python3.12 ...'

for candidate in "${PYTHON:-}" python3.13 python3.12 python3.11 python3; do
    [ -n "$candidate" ] || continue
    if ! "$candidate" -c 'import sys; sys.exit(sys.version_info < (3, 11))' 2>/dev/null; then
        if [ "$candidate" = "${PYTHON:-}" ]; then
            wanting="PYTHON=$PYTHON is not a Python 3.11 or newer"
            break
        fi
    elif "$candidate" -c 'import ensurepip, venv' 2>/dev/null; then
        python=$candidate
        break
    else
        wanting="$candidate cannot build environments; Debian: apt-get install python3-venv"
    fi
done
