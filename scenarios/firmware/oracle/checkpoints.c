/*
 * Programs as compilers make them: sorting, fractions, printing, numbers of 32 and 64 bits. For each, what comes out and how
 * many cycles it took beyond a program that does nothing, by timer 1. No interrupts: only the processor and one timer are asked.
 */
#include <avr/io.h>
#include <math.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define ROUNDS 60

static uint32_t chance = 1;

/* The minimal standard generator: S. K. Park and K. W. Miller, Communications of the ACM 31(10), 1988 */
static uint32_t next(void)
{
    chance = (uint32_t)((uint64_t)chance * 48271u % 2147483647u);
    return chance;
}

static void put(char c)
{
    while ((UCSR0A & (1 << UDRE0)) == 0) {
    }
    UDR0 = c;
}

static void say(const char *text)
{
    while (*text != 0) {
        put(*text++);
    }
}

static int ascending(const void *a, const void *b)
{
    uint16_t x = *(const uint16_t *)a;
    uint16_t y = *(const uint16_t *)b;
    return x < y ? -1 : x > y;
}

static uint32_t sorting(void)
{
    uint16_t values[20];
    for (uint8_t i = 0; i < 20; i++) {
        values[i] = (uint16_t)next();
    }
    qsort(values, 20, sizeof values[0], ascending);
    return (uint32_t)values[0] << 16 | values[19];
}

static uint32_t insertion(void)
{
    uint8_t values[24];
    for (uint8_t i = 0; i < 24; i++) {
        uint8_t value = (uint8_t)next();
        uint8_t at = i;
        while (at > 0 && values[at - 1] > value) {
            values[at] = values[at - 1];
            at--;
        }
        values[at] = value;
    }
    return (uint32_t)values[1] << 8 | values[22];
}

static uint32_t fractions(void)
{
    float x = (float)(next() & 0xFFFF) / 1000.0f;
    float y = sinf(x) * sqrtf(x + 1.0f) + expf(-x / 10.0f) - atan2f(x, 3.0f);
    uint32_t bits;
    memcpy(&bits, &y, sizeof bits);
    return bits;
}

static uint32_t printing(void)
{
    char text[40];
    snprintf(text, sizeof text, "%ld %05u %x %s", (long)next(), (unsigned)(next() & 0x3FFF), (unsigned)next() & 0xFFF, "knots");
    uint32_t sum = 0;
    for (const char *c = text; *c != 0; c++) {
        sum = sum * 31 + (uint8_t)*c;
    }
    return sum;
}

static uint32_t wide(void)
{
    uint32_t a = next();
    uint32_t b = next() & 0xFFFF;
    return a / (b + 1) * 7 + a % (b + 3) + (uint32_t)((int32_t)a / -(int32_t)(b + 1)) + (a >> (b & 31)) + (a << (b & 15));
}

static uint32_t wider(void)
{
    uint64_t a = (uint64_t)next() << 31 | next();
    uint64_t b = next();
    uint64_t c = a / (b + 1) + a % (b + 5) + a * b + (a >> (b & 63)) + (uint64_t)((int64_t)a / -(int64_t)(b | 1));
    return (uint32_t)c ^ (uint32_t)(c >> 32);
}

static uint32_t nothing(void)
{
    return 0;
}

static uint16_t cycles_of(uint32_t (*program)(void), uint32_t *value)
{
    TCNT1 = 0;
    TIFR1 = 1 << TOV1;
    *value = program();
    uint16_t took = TCNT1;
    if (TIFR1 & 1 << TOV1) {
        say("too long ");
    }
    return took;
}

static void checkpoint(const char *name, uint32_t (*program)(void))
{
    uint32_t value;
    uint16_t base = cycles_of(nothing, &value);
    uint32_t sum = 0;
    uint32_t cycles = 0;
    chance = 20261127;
    for (uint8_t i = 0; i < ROUNDS; i++) {
        cycles += (uint16_t)(cycles_of(program, &value) - base);
        sum = sum * 31 + value;
    }
    char text[60];
    snprintf(text, sizeof text, "%s %08lx %lu\n", name, (unsigned long)sum, (unsigned long)cycles);
    say(text);
}

int main(void)
{
    UBRR0 = 0;
    UCSR0A = 1 << U2X0;
    UCSR0B = 1 << TXEN0;
    TCCR1B = 1 << CS10;
    checkpoint("sorting", sorting);
    checkpoint("insertion", insertion);
    checkpoint("fractions", fractions);
    checkpoint("printing", printing);
    checkpoint("wide", wide);
    checkpoint("wider", wider);
    say(".\n");
    for (;;) {
    }
}
