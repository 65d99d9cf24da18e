/*
 * How long parts of a program take: wrap a call, and the longest time it took, how often it came and how far apart are
 * kept under its name. For any firmware, whatever protocol it speaks; needs nothing but this file.
 *
 *     DROPLINE_TIME("display", refresh());        blocks the main loop while it runs
 *     DROPLINE_TIME_OFF("leds", leds.show());     keeps interrupts off while it runs
 *
 *     dropline_time_print(put);                   puts a line for each name, character by character, and begins anew
 *
 * Print to a spare serial port, or to the only one while the board is not on the pair, about once a second:
 * `dropline profile` reads the lines and writes what a pit file needs. On a hobby core the time comes from micros();
 * elsewhere define DROPLINE_TIME_NOW() before, as microseconds in 32 bits. Names have no blanks. A call takes two readings of
 * the clock and some forty cycles more. Include it in one file of a program.
 */
#ifndef DROPLINE_TIME_H
#define DROPLINE_TIME_H

#include <stdint.h>

#ifndef DROPLINE_TIME_NOW
#ifdef ARDUINO
#define DROPLINE_TIME_NOW() micros()
#else
#error "define DROPLINE_TIME_NOW(): microseconds in 32 bits"
#endif
#endif

struct dropline_timed {
    const char *name;
    uint8_t interrupts_off;
    uint8_t is_listed;
    uint16_t count;
    uint32_t longest;
    uint32_t first;
    uint32_t last;
    struct dropline_timed *next;
};

static struct dropline_timed *dropline_timed_all;

/* A call that began at an instant is over. */
static inline void dropline_timed_add(struct dropline_timed *timed, uint32_t from)
{
    uint32_t took = DROPLINE_TIME_NOW() - from;
    if (!timed->is_listed) {
        timed->is_listed = 1;
        timed->next = dropline_timed_all;
        dropline_timed_all = timed;
    }
    if (timed->count == 0) {
        timed->first = from;
    }
    timed->last = from;
    if (timed->count < 0xFFFF) {
        timed->count++;
    }
    if (took > timed->longest) {
        timed->longest = took;
    }
}

#define DROPLINE_TIME_AS(NAME, OFF, CALL)                                             \
    do {                                                                              \
        static struct dropline_timed dropline_timed = {NAME, OFF, 0, 0, 0, 0, 0, 0};  \
        uint32_t dropline_from = DROPLINE_TIME_NOW();                                 \
        CALL;                                                                         \
        dropline_timed_add(&dropline_timed, dropline_from);                           \
    } while (0)

#define DROPLINE_TIME(NAME, CALL) DROPLINE_TIME_AS(NAME, 0, CALL)
#define DROPLINE_TIME_OFF(NAME, CALL) DROPLINE_TIME_AS(NAME, 1, CALL)

typedef void (*dropline_put)(char character);

static uint8_t dropline_time_sum;

static inline void dropline_time_put(dropline_put put, char character)
{
    dropline_time_sum = (uint8_t)(dropline_time_sum + (uint8_t)character);
    put(character);
}

static inline void dropline_time_number(dropline_put put, uint32_t number)
{
    char digits[10];
    uint8_t count = 0;
    do {
        digits[count++] = (char)('0' + number % 10);
        number /= 10;
    } while (number > 0);
    while (count > 0) {
        dropline_time_put(put, digits[--count]);
    }
    dropline_time_put(put, ' ');
}

/* time NAME LONGEST COUNT SPAN loop|interrupts SUM, times in microseconds: SPAN from the first begin to the last, SUM that of
   all characters before it modulo 256, in two hexadecimal digits */
static inline void dropline_time_print(dropline_put put)
{
    static const char DIGITS[] = "0123456789ABCDEF";
    for (struct dropline_timed *timed = dropline_timed_all; timed != 0; timed = timed->next) {
        dropline_time_sum = 0;
        for (const char *text = "time "; *text != 0; text++) {
            dropline_time_put(put, *text);
        }
        for (const char *text = timed->name; *text != 0; text++) {
            dropline_time_put(put, *text);
        }
        dropline_time_put(put, ' ');
        dropline_time_number(put, timed->longest);
        dropline_time_number(put, timed->count);
        dropline_time_number(put, timed->last - timed->first);
        for (const char *text = timed->interrupts_off ? "interrupts " : "loop "; *text != 0; text++) {
            dropline_time_put(put, *text);
        }
        put(DIGITS[dropline_time_sum >> 4]);
        put(DIGITS[dropline_time_sum & 15]);
        put('\r');
        put('\n');
        timed->count = 0;
        timed->longest = 0;
    }
}

#endif
