#!/bin/sh
# Brings what the tests need from outside Python; where it may not install, it says what to type.
set -eu
cd "$(dirname "$0")/.."

packages=''
command -v ccx >/dev/null 2>&1 || packages="$packages calculix-ccx"
ls /usr/lib/postgresql/*/bin/initdb >/dev/null 2>&1 || command -v initdb >/dev/null 2>&1 ||
    packages="$packages postgresql"
. tools/python.sh
[ -n "$python" ] || [ -n "${PYTHON:-}" ] || packages="$packages python3 python3-venv"

if [ -z "$packages" ]; then
    echo 'tools: all there'
elif [ -f /etc/debian_version ] && [ "$(id -u)" -eq 0 ]; then
    apt-get update
    DEBIAN_FRONTEND=noninteractive apt-get install -y --no-install-recommends $packages
elif [ -f /etc/debian_version ]; then
    echo "as root: apt-get update && apt-get install -y --no-install-recommends$packages"
else
    echo "needed, by their names on Debian:$packages"
    echo 'PostgreSQL is only used as a cluster of its own in a temporary folder.'
    echo 'CalculiX is the finite element program ccx; most systems and package collections have it.'
fi
