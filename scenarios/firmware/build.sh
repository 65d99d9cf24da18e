#!/usr/bin/env bash
# Builds the programs that the tests flash into emulated boards, with Debian's gcc-avr and avr-libc:
#   build.sh [FOLDER]    default: images, beside this script
# Images of the same sources are the same byte for byte.
set -euo pipefail
here=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
out=${1:-$here/images}
node=$here/../../protocol/firmware/src
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
mkdir -p "$out"

flags=(-Os -std=c99 -Wall -Wextra -Wshadow -Werror -DF_CPU=16000000UL -I"$node" -I"$here/src"
    -ffunction-sections -fdata-sections -Wl,--gc-sections)

# image CHIP NAME SOURCE... -- MACRO...
image() {
    local chip=$1 name=$2
    shift 2
    avr-gcc -mmcu="$chip" "${flags[@]}" -o "$work/$name.elf" "$@"
    avr-objcopy -O ihex -R .eeprom "$work/$name.elf" "$out/$name.hex"
}

lamps() {
    local mistake=${1:-NONE}
    local name=lamps
    [ "$mistake" = NONE ] || name=lamps-$(tr 'A-Z_' 'a-z-' <<<"$mistake")
    image atmega328p "$name" "$here/src/lamps.c" "$node/dropline_node.c" "-DMISTAKE=$mistake" "${@:2}"
}

lamps NONE
cp "$work/lamps.elf" "$out/lamps.elf"
for mistake in RELEASED_ON_EMPTY RELEASED_TOO_SOON RELEASED_TOO_LATE NEVER_RELEASED NEVER_ENABLED ENABLED_TOO_LATE \
    LOOP_BLOCKS LEDS_BLOCK SMALL_RING ADDRESS_LOST RATE_OFF STACK_TOO_DEEP \
    WATCHDOG_BITES INTERRUPT_STAYS WAITS_FOR_DISPLAY BABBLES DEAF_AFTER_REPLY PRINTS_IN_INTERRUPT HALF_CLOCK; do
    lamps "$mistake"
done

# The library itself with one place of it spoilt.
spoilt() {
    local name=$1 from=$2 to=$3
    sed "s/$from/$to/" "$node/dropline_node.c" >"$work/$name.c"
    if cmp -s "$node/dropline_node.c" "$work/$name.c"; then
        echo "nothing to spoil for $name" >&2
        exit 1
    fi
    image atmega328p "lamps-$name" "$here/src/lamps.c" "$work/$name.c"
}
spoilt ignores-check 'if (dropline_check(frame, length) != ' 'if (0 \&\& dropline_check(frame, length) != '
spoilt answers-others 'if (frame\[1\] != node->address)' 'if (frame[1] == 0)'
spoilt check-swapped 'reply\[end++\] = (uint8_t)(check >> 8);' 'check = (uint16_t)(check << 8 | check >> 8); &'
spoilt stumbles 'node->spoilt = 0;' ''
spoilt answers-broadcasts 'if (frame\[0\] == STATE .*' '& return reply(node);'

image atmega328p registers "$here/src/registers.c"
image atmega328p registers-short-silence "$here/src/registers.c" -DSHORT_SILENCE
image atmega328p lines "$here/src/lines.c"

# Boards for one pair: the same with an address each, and a switch.
for address in 7 8 9; do
    image atmega328p "lamps-at-$address" "$here/src/lamps.c" "$node/dropline_node.c" "-DADDRESS=$address" -DCONTROLS=1
done
image atmega328p lamps-answers-others-at-8 "$here/src/lamps.c" "$work/answers-others.c" -DADDRESS=8

for shows in OLED LCD LCD_EXPANDER EXPANDER DIGITS LEDS STEPPER REGISTER STUCK_OLED; do
    image atmega328p "panel-$(tr 'A-Z_' 'a-z-' <<<"$shows")" "$here/src/panels.c" "$node/dropline_node.c" "-DSHOWS=$shows"
done

image atmega328p timed "$here/src/timed.c"

image atmega328p crc "$here/src/crc.c" "$node/dropline_node.c"

for chip in atmega328p atmega2560; do
    python3 "$here/oracle/cases.py" "$chip" >"$work/cases-$chip.S"
    avr-gcc -mmcu="$chip" -O2 -Wall -Wextra -Werror -std=gnu11 -o "$work/oracle-$chip.elf" \
        "$here/oracle/oracle.c" "$work/cases-$chip.S"
    avr-objcopy -O ihex "$work/oracle-$chip.elf" "$out/oracle-$chip.hex"
    for level in 0 1 2 3; do
        avr-gcc -mmcu="$chip" "-O$level" -Wall -Wextra -Werror -std=gnu99 -o "$work/checkpoints.elf" \
            "$here/oracle/checkpoints.c" -lm
        avr-objcopy -O ihex -R .eeprom "$work/checkpoints.elf" "$out/checkpoints-$chip-o$level.hex"
    done
done
