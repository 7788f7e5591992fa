#!/usr/bin/env bash
# Proves the README's commands on machines that have nothing: bare Debian in a folder, the committed tree, the command as it
# stands there. Needs root, git and debootstrap; mounts end with the script, folders too unless --keep is given.
#
#   ui/packaging/fresh_machine.sh [--tests] [--keep FOLDER] [SUITE ...]
#
# SUITE is a Debian release, bookworm (Python 3.11) and trixie (3.13) unless named. The first command runs with --fast; --tests
# runs the second one as well. MIRROR is taken from the environment. Settings of pip and apt, proxies and certificates
# are those of this machine; credentials are not copied.
set -euo pipefail

root=$(cd "$(dirname "$0")/../.." && pwd)
mirror=${MIRROR:-http://deb.debian.org/debian}
tests=no keep="" suites=()
while [ $# -gt 0 ]; do
    case $1 in
        --tests) tests=yes ;;
        --keep) keep=${2:?--keep needs a folder}; shift ;;
        -*) echo "fresh_machine.sh: no option $1" >&2; exit 2 ;;
        *) suites+=("$1") ;;
    esac
    shift
done
[ ${#suites[@]} -gt 0 ] || suites=(bookworm trixie)
[ "$(id -u)" = 0 ] || { echo "fresh_machine.sh: only root may change the root folder" >&2; exit 1; }
command -v debootstrap >/dev/null || { echo "fresh_machine.sh: needs debootstrap: apt-get install debootstrap" >&2; exit 1; }

# the two lines of code under "Two commands", and nothing that is repeated here
mapfile -t commands < <(sed -n '/^## Two commands/,/^## /s/^    //p' "$root/README.md")
[ ${#commands[@]} = 2 ] || { echo "fresh_machine.sh: README.md has ${#commands[@]} commands, not two" >&2; exit 1; }

place=$keep
if [ -z "$place" ]; then
    place=$(mktemp -d)
    trap 'rm -rf --one-file-system "$place"' EXIT
fi
mkdir -p "$place"

# whom this machine trusts: under a name of its own, for installing ca-certificates writes the usual file anew
trusted=/etc/ssl/certs/ca-certificates.crt
trusted_there=/usr/local/share/trusted.crt

# how this machine reaches the registries; nothing else of its environment is handed on
network=()
while IFS= read -r -d '' pair; do
    case $pair in
        PIP_CERT=*) ;;
        PIP_*=* | http_proxy=* | https_proxy=* | no_proxy=* | HTTP_PROXY=* | HTTPS_PROXY=* | NO_PROXY=*) network+=("$pair") ;;
    esac
done < <(env -0)
[ ! -f "$trusted" ] || network+=("PIP_CERT=$trusted_there")

install_machine() { # folder, suite
    debootstrap --variant=minbase "$2" "$1" "$mirror" >"$1.log" 2>&1 || { tail -5 "$1.log" >&2; return 1; }
    printf '#!/bin/sh\nexec "$@"\n' >"$1/usr/local/bin/sudo" # there is only root, who needs none
    chmod +x "$1/usr/local/bin/sudo"
    local file
    for file in /etc/resolv.conf /etc/hosts /etc/pip.conf "$HOME/.config/pip/pip.conf"; do
        [ -f "$file" ] || continue
        mkdir -p "$1$(dirname "$file")"
        cp -L "$file" "$1$file"
    done
    [ ! -f "$trusted" ] || cp -L "$trusted" "$1$trusted_there"
    find /etc/apt/apt.conf.d -type f \( -name '*proxy*' -o -name '99*' \) -exec cp -t "$1/etc/apt/apt.conf.d" {} +
    mkdir "$1/root/stillshaft"
    git -C "$root" archive HEAD | tar -x -C "$1/root/stillshaft"
    inside "$1" 'apt-get update -qq'
}

inside() { # folder, command; /proc, shared memory and terminals are there for this one command
    unshare --mount --pid --fork --kill-child bash -c '
        mount -t proc proc "$1/proc" && mkdir -p "$1/dev/shm" && mount -t tmpfs tmpfs "$1/dev/shm" &&
            mount -t devpts -o newinstance,ptmxmode=0666 devpts "$1/dev/pts" &&
            ln -sf pts/ptmx "$1/dev/ptmx" && shift && exec chroot "$@"' - "$1" "$1" \
        env -i PATH=/usr/local/sbin:/usr/local/bin:/usr/sbin:/usr/bin:/sbin:/bin HOME=/root LANG=C.UTF-8 \
        DEBIAN_FRONTEND=noninteractive "${network[@]}" bash -c "cd /root/stillshaft && $2
            exit \$?" # a command after it: so the shell stays, and buries processes that lost their parent
}

failed=0
attempt() { # folder, suite, name, command
    local begin=$SECONDS said
    if inside "$1" "$4" >"$1.$3.log" 2>&1; then
        said=$(tail -1 "$1.$3.log")
        echo "$2: $3: done in $((SECONDS - begin)) s, Python $(inside "$1" '.venv/bin/python -V' | cut -d' ' -f2): $said"
    else
        echo "$2: $3: FAILED after $((SECONDS - begin)) s; it ends with:"
        tail -20 "$1.$3.log"
        failed=1
    fi
}

for suite in "${suites[@]}"; do
    install_machine "$place/$suite" "$suite"
    attempt "$place/$suite" "$suite" "first command" "${commands[0]} --fast"
    [ $tests = no ] || attempt "$place/$suite" "$suite" "tests" "${commands[1]}"
done
exit $failed
