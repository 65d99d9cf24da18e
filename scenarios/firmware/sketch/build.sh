#!/usr/bin/env bash
# Builds sketch.cpp with Debian's arduino-core-avr, whose sources are not kept here: build.sh CHIP VARIANT OUT.elf
set -euo pipefail
here=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
chip=$1
variant=$2
out=$3
core=/usr/share/arduino/hardware/arduino/avr
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
includes=(-I"$core/cores/arduino" -I"$core/variants/$variant" -I"$core/libraries/EEPROM/src" -I"$core/libraries/Wire/src")
common=(-mmcu="$chip" -Os -w -DF_CPU=16000000L -DARDUINO=10819 -DARDUINO_ARCH_AVR -DDECIMAL_DIG=__DECIMAL_DIG__ -ffunction-sections -fdata-sections
    "${includes[@]}")
for file in "$core"/cores/arduino/*.c "$core"/libraries/Wire/src/utility/*.c "$core"/cores/arduino/*.S; do
    avr-gcc "${common[@]}" -c "$file" -o "$work/$(basename "$file").o"
done
for file in "$core"/cores/arduino/*.cpp "$core"/libraries/Wire/src/*.cpp "$here/sketch.cpp"; do
    avr-g++ "${common[@]}" -std=gnu++11 -fno-exceptions -fno-threadsafe-statics -c "$file" -o "$work/$(basename "$file").o"
done
avr-gcc -mmcu="$chip" -Os -Wl,--gc-sections -o "$out" "$work"/*.o -lm
