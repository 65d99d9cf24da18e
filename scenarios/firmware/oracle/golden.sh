#!/usr/bin/env bash
# Has Debian's simavr run a program beside, and keeps what it prints: golden.sh CHIP PROGRAM > FILE
#   golden.sh atmega328p oracle-atmega328p > atmega328p.txt                        every instruction; takes two minutes
#   for level in 0 1 2 3; do golden.sh atmega2560 checkpoints-atmega2560-o$level; done > checkpoints-atmega2560.txt
# simavr is a witness here and nothing else: no part of Dropline is made of it.
set -euo pipefail
here=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
chip=$1
program=$2
out=$(mktemp)
trap 'rm -f "$out"' EXIT
simavr -m "$chip" -f 16000000 "$here/../images/$program.hex" >"$out" 2>&1 &
witness=$!
# a point on a line of its own is the end
while kill -0 "$witness" 2>/dev/null && ! sed 's/\x1b\[[0-9;]*m//g' "$out" | grep -qx '\.\.'; do sleep 1; done
kill "$witness" 2>/dev/null || true
# simavr colours what a program prints, and shows the end of a line as a point
sed 's/\x1b\[[0-9;]*m//g; s/\.$//' "$out" | grep -E '^[0-9a-z]+ [0-9a-z]' | grep -v '^signal caught'
