#!/usr/bin/env bash
# Has Debian's simavr try every instruction, and keeps what comes out: golden.sh CHIP > CHIP.txt
# simavr is a witness here and nothing else: no part of Dropline is made of it. Takes a minute or two.
set -euo pipefail
here=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
chip=$1
out=$(mktemp)
trap 'rm -f "$out"' EXIT
timeout 300 simavr -m "$chip" -f 16000000 "$here/../images/oracle-$chip.hex" >"$out" 2>&1 || true
# simavr colours what a program prints, and shows the end of a line as a point
sed 's/\x1b\[[0-9;]*m//g; s/\.$//' "$out" | grep -E '^[0-9a-f]{8} '
