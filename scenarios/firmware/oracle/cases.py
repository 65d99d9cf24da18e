#!/usr/bin/env python3
"""Writes the single instructions that oracle.c tries: cases.S, for one chip.

Every case begins with all registers and flags at random and a timer at nought, and ends with both kept.
"""
import sys

WIDE = sys.argv[1] == "atmega2560"
X, Y, Z, PROGRAM = 1, 2, 4, 8

cases = []


def case(name, code, flags=0):
    cases.append((name, code, flags))


PAIRS = [(0, 1), (5, 5), (16, 3), (2, 31), (24, 25), (30, 17)]
HIGH = [(16, 17), (31, 16), (20, 20), (24, 30), (29, 23)]
MIDDLE = [(16, 17), (23, 16), (20, 20), (18, 22)]
CONSTANTS = [0, 1, 0x7F, 0x80, 0xFF, 0x5A, 0xA5]

for op in "add adc sub sbc and or eor cp cpc mov mul".split():
    for d, r in PAIRS:
        case(f"{op} r{d},r{r}", f"{op} r{d}, r{r}")
for d, r in [(0, 2), (30, 4), (26, 26), (24, 0), (2, 30)]:
    case(f"movw r{d},r{r}", f"movw r{d}, r{r}")
for d, r in HIGH:
    case(f"muls r{d},r{r}", f"muls r{d}, r{r}")
for op in "mulsu fmul fmuls fmulsu".split():
    for d, r in MIDDLE:
        case(f"{op} r{d},r{r}", f"{op} r{d}, r{r}")
for op in "subi sbci andi ori cpi ldi".split():
    for i, k in enumerate(CONSTANTS):
        d = 16 + i * 2 + (i & 1)
        case(f"{op} r{d},{k}", f"{op} r{d}, {k}")
for op in "adiw sbiw".split():
    for d in (24, 26, 28, 30):
        for k in (0, 1, 31, 63):
            case(f"{op} r{d},{k}", f"{op} r{d}, {k}")
for op in "com neg inc dec asr lsr ror swap".split():
    for d in (0, 7, 16, 26, 31):
        case(f"{op} r{d}", f"{op} r{d}")
for bit in range(8):
    case(f"bset {bit}", f"bset {bit}")
    case(f"bclr {bit}", f"bclr {bit}")
    case(f"bst r{bit * 4},{bit}", f"bst r{bit * 4}, {bit}")
    case(f"bld r{bit * 4 + 1},{bit}", f"bld r{bit * 4 + 1}, {bit}")
    for op in ("brbs", "brbc"):
        case(f"{op} {bit},+2", f"{op} {bit}, 1f\n nop\n nop\n1:")
    case(f"brbs {bit},-", f"rjmp 2f\n1: jmp keep\n2: brbs {bit}, 1b")
    for op in ("sbrc", "sbrs"):
        case(f"{op} r{31 - bit * 3},{bit} over one", f"{op} r{31 - bit * 3}, {bit}\n inc r5")
        case(f"{op} r{bit * 3},{bit} over two", f"{op} r{bit * 3}, {bit}\n sts window, r6")
    for op in ("sbic", "sbis"):
        case(f"{op} {bit} over one", f"out 0x1E, r9\n {op} 0x1E, {bit}\n inc r5")
        case(f"{op} {bit} over two", f"out 0x1E, r9\n {op} 0x1E, {bit}\n call nothing")
    case(f"sbi {bit}", f"out 0x1E, r9\n sbi 0x1E, {bit}\n in r10, 0x1E")
    case(f"cbi {bit}", f"out 0x1E, r9\n cbi 0x1E, {bit}\n in r10, 0x1E")
for d, r in PAIRS:
    case(f"cpse r{d},r{r} over one", f"cpse r{d}, r{r}\n inc r5")
    case(f"cpse r{d},r{r} over two", f"cpse r{d}, r{r}\n lds r5, window")
for d in (0, 15, 16, 31):
    case(f"in r{d},sreg", f"in r{d}, 0x3F")
    case(f"out sreg,r{d}", f"out 0x3F, r{d}")
    case(f"out in r{d}", f"out 0x2A, r{d}\n in r{(d + 5) % 32}, 0x2A")
    case(f"push r{d} pop", f"push r{d}\n pop r{(d + 9) % 32}")
    case(f"lds r{d}", f"lds r{d}, window + {d}")
    case(f"sts r{d}", f"sts window + {d}, r{d}")
for pointer, flag, free in (("X", X, (0, 16, 30)), ("Y", Y, (1, 17, 31)), ("Z", Z, (2, 18, 26))):
    for d in free:
        for form in (f"{pointer}", f"{pointer}+", f"-{pointer}"):
            case(f"ld r{d},{form}", f"ld r{d}, {form}", flag)
            case(f"st {form},r{d}", f"st {form}, r{d}", flag)
        if pointer != "X":
            for q in (1, 2, 31, 63):
                case(f"ldd r{d},{pointer}+{q}", f"ldd r{d}, {pointer}+{q}", flag)
                case(f"std {pointer}+{q},r{d}", f"std {pointer}+{q}, r{d}", flag)
case("lpm", "lpm", PROGRAM)
for d in (0, 16, 29):
    case(f"lpm r{d},Z", f"lpm r{d}, Z", PROGRAM)
    case(f"lpm r{d},Z+", f"lpm r{d}, Z+", PROGRAM)
    if WIDE:
        case(f"elpm r{d},Z", f"elpm r{d}, Z", PROGRAM)
        case(f"elpm r{d},Z+", f"elpm r{d}, Z+", PROGRAM)
AIM = " ldi r30, pm_lo8(1f)\n ldi r31, pm_hi8(1f)\n"
AIM_RET = " ldi r30, pm_lo8(nothing)\n ldi r31, pm_hi8(nothing)\n"
case("nop", "nop")
case("wdr", "wdr")
case("rjmp", "rjmp 1f\n nop\n1:")
case("jmp", "jmp 1f\n nop\n1:")
case("ijmp", AIM + " ijmp\n nop\n1:")
case("rcall ret", "rcall 1f\n rjmp 2f\n1: ret\n2:")
case("call ret", "call nothing")
case("icall ret", AIM_RET + " icall")
case("reti", "rcall 1f\n rjmp 2f\n1: reti\n2:")
if WIDE:
    case("eijmp", AIM + " eijmp\n nop\n1:")
    case("eicall ret", AIM_RET + " eicall")

out = ['#include <avr/io.h>', ' .section .text.cases,"ax",@progbits', '']
out += ["nothing: ret", ""]
for n, (name, code, flags) in enumerate(cases):
    out.append(f"case_{n}: ; {name}\n call place\n {code}\n jmp keep")
out += [' .section .progmem.data,"a",@progbits', " .global cases, case_count"]
for n, (name, code, flags) in enumerate(cases):
    out.append(f'name_{n}: .asciz "{name}"')
out.append(" .balign 2\ncases:")
for n, (name, code, flags) in enumerate(cases):
    out.append(f" .word pm(case_{n}), name_{n}, {flags}")
out.append(f"case_count: .word {len(cases)}")
out += [
    " .text",
    " .global try_case",
    "; try_case(word address in r25:r24): keeps what C wants kept",
    "try_case:",
]
kept = [*range(2, 18), 28, 29]
out += [f" push r{r}" for r in kept]
out += [" movw r30, r24"]
if WIDE:
    out += [" ldi r25, 0", " out 0x3C, r25"]
out += [" eicall" if WIDE else " icall"]
out += [" clr r1", " cli"]
out += [f" pop r{r}" for r in reversed(kept)]
out += [" ret", ""]
out += ["; all registers and flags as wanted, the timer at nought", "place:", " ldi r30, lo8(wanted)", " ldi r31, hi8(wanted)"]
out += [f" ldd r{r}, Z+{r}" for r in range(30)]
out += [
    " lds r30, wanted + 30",
    " lds r31, wanted + 32",
    " out 0x3F, r31",
    " ldi r31, 0",
    " sts TCNT1H, r31",
    " sts TCNT1L, r31",
    " lds r31, wanted + 31",
    " ret",
    "",
    "keep:",
    " sts found + 31, r31",
    " lds r31, TCNT1L",
    " sts found + 33, r31",
    " in r31, 0x3F",
    " sts found + 32, r31",
]
out += [f" sts found + {r}, r{r}" for r in range(31)]
out += [" ret"]
print("\n".join(out))
