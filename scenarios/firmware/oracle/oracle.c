/*
 * Tries every instruction in thousands of states and prints, for each, a number that stands for all that came out:
 * registers, flags, memory and cycles. The numbers are the same on every processor of the family that is what its
 * manual says, whether it is made of silicon or of software.
 */
#include <avr/io.h>
#include <avr/pgmspace.h>
#include <stdint.h>

#ifndef STATES
#define STATES 1024
#endif

#define WINDOW 128
#define IN_X 1
#define IN_Y 2
#define IN_Z 4
#define IN_PROGRAM 8

struct trial {
    uint16_t code;
    uint16_t name;
    uint16_t pointers;
};

extern const struct trial cases[] PROGMEM;
extern const uint16_t case_count PROGMEM;
void try_case(uint16_t code);

uint8_t wanted[33];
uint8_t found[34];
uint8_t window[WINDOW];
static const uint8_t constants[64] PROGMEM = {
    0x3a, 0x91, 0x00, 0xff, 0x7f, 0x80, 0x12, 0xc4, 0x55, 0xaa, 0x01, 0xfe, 0x66, 0x9d, 0x27, 0xe8,
    0x0f, 0xf0, 0x33, 0xcc, 0x5b, 0xb6, 0x6d, 0xda, 0xb5, 0x6b, 0xd6, 0xad, 0x71, 0xe3, 0xc7, 0x8e,
    0x1c, 0x38, 0x70, 0xe0, 0xc1, 0x83, 0x07, 0x0e, 0x44, 0x88, 0x11, 0x22, 0x99, 0xbb, 0xdd, 0xee,
    0x4e, 0x9c, 0x39, 0x72, 0xe4, 0xc9, 0x93, 0x26, 0x4d, 0x9a, 0x35, 0x6a, 0xd4, 0xa9, 0x53, 0xa6};

static uint16_t chance;

/* xorshift of 16 bits: G. Marsaglia, "Xorshift RNGs", Journal of Statistical Software 8(14), 2003 */
static uint8_t random_byte(void)
{
    static const uint8_t corners[8] = {0x00, 0x01, 0x7f, 0x80, 0x81, 0xff, 0xfe, 0x0f};
    chance ^= chance << 7;
    chance ^= chance >> 9;
    chance ^= chance << 8;
    uint8_t value = (uint8_t)(chance >> 8);
    return (chance & 7) == 0 ? corners[value & 7] : value;
}

static void put(char c)
{
    while ((UCSR0A & (1 << UDRE0)) == 0) {
    }
    UDR0 = c;
}

static void hex(uint32_t value)
{
    for (int8_t shift = 28; shift >= 0; shift -= 4) {
        uint8_t digit = value >> shift & 15;
        put(digit < 10 ? '0' + digit : 'a' - 10 + digit);
    }
}

static void point(uint8_t low, uint16_t to)
{
    wanted[low] = (uint8_t)to;
    wanted[low + 1] = (uint8_t)(to >> 8);
}

static uint16_t high;
static uint16_t low;

static void mix(uint8_t value)
{
    low = (low + value) * 0x6255u + 0x3619u;
    high = (uint16_t)(high << 8 | high >> 8) + low;
}

static uint32_t trials(uint16_t code, uint8_t pointers, uint8_t base)
{
    high = 0;
    low = 5381;
    for (uint16_t state = 0; state < STATES; state++) {
        for (uint8_t i = 0; i < sizeof wanted; i++) {
            wanted[i] = random_byte();
        }
        uint8_t inside = 1 + (random_byte() & 31);
        if (pointers & IN_X) {
            point(26, (uint16_t)(window + inside));
        }
        if (pointers & IN_Y) {
            point(28, (uint16_t)(window + inside));
        }
        if (pointers & IN_Z) {
            point(30, (uint16_t)(window + inside));
        }
        if (pointers & IN_PROGRAM) {
            point(30, (uint16_t)(constants + inside));
        }
        try_case(code);
        found[33] -= base;
        for (uint8_t i = 0; i < sizeof found; i++) {
            mix(found[i]);
        }
    }
    for (uint8_t i = 0; i < WINDOW; i++) {
        mix(window[i]);
    }
    return (uint32_t)high << 16 | low;
}

int main(void)
{
    UBRR0 = 0;
    UCSR0A = 1 << U2X0;
    UCSR0B = 1 << TXEN0;
    TCCR1B = 1 << CS10;
    chance = 0x2545;
    for (uint8_t i = 0; i < WINDOW; i++) {
        window[i] = random_byte();
    }
    uint16_t count = pgm_read_word(&case_count);
    uint16_t nop = 0;
    for (uint16_t n = 0; n < count; n++) {
        const char *name = (const char *)pgm_read_word(&cases[n].name);
        if (pgm_read_byte(name) == 'n' && pgm_read_byte(name + 1) == 'o') {
            nop = pgm_read_word(&cases[n].code);
        }
    }
    try_case(nop);
    uint8_t base = found[33] - 1;
    for (uint16_t n = 0; n < count; n++) {
        chance = 0x2545 + 131u * n;
        uint32_t sum = trials(pgm_read_word(&cases[n].code), (uint8_t)pgm_read_word(&cases[n].pointers), base);
        hex(sum);
        put(' ');
        const char *name = (const char *)pgm_read_word(&cases[n].name);
        for (char c = pgm_read_byte(name); c != 0; c = pgm_read_byte(++name)) {
            put(c);
        }
        put('\n');
    }
    put('.');
    put('\n');
    for (;;) {
    }
}
