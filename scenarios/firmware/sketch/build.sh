#!/usr/bin/env bash
# Builds a sketch with Debian's arduino-core-avr, whose sources are not kept here, and with the node's library:
#   build.sh SKETCH CHIP VARIANT OUT.elf
set -euo pipefail
here=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
sketch=$1
chip=$2
variant=$3
out=$4
core=/usr/share/arduino/hardware/arduino/avr
node=$here/../../../protocol/firmware/src
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
includes=(-I"$core/cores/arduino" -I"$core/variants/$variant" -I"$core/libraries/EEPROM/src" -I"$core/libraries/Wire/src"
    -I"$node")
common=(-mmcu="$chip" -Os -DF_CPU=16000000L -DARDUINO=10819 -DARDUINO_ARCH_AVR -DDECIMAL_DIG=__DECIMAL_DIG__
    -ffunction-sections -fdata-sections "${includes[@]}")
cpp=(-std=gnu++11 -fno-exceptions -fno-threadsafe-statics)
for file in "$core"/cores/arduino/*.c "$core"/libraries/Wire/src/utility/*.c "$core"/cores/arduino/*.S; do
    avr-gcc "${common[@]}" -w -c "$file" -o "$work/$(basename "$file").o"
done
for file in "$core"/cores/arduino/*.cpp "$core"/libraries/Wire/src/*.cpp; do
    avr-g++ "${common[@]}" "${cpp[@]}" -w -c "$file" -o "$work/$(basename "$file").o"
done
avr-ar rcs "$work/core.a" "$work"/*.o
avr-gcc "${common[@]}" -Wall -Wextra -Werror -std=c99 -c "$node/dropline_node.c" -o "$work/node.o"
avr-g++ "${common[@]}" "${cpp[@]}" -x c++ -include Arduino.h -c "$sketch" -o "$work/sketch.o"
avr-gcc -mmcu="$chip" -Os -Wl,--gc-sections -o "$out" "$work/sketch.o" "$work/node.o" "$work/core.a" -lm
