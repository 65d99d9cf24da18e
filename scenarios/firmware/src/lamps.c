/*
 * A lamp panel for an ATmega328P at 16 MHz: six lamps on PB0 to PB5, for the signals 0 to 5, a switch at PC0. Right as it
 * stands; built with -DMISTAKE=NAME it has that one mistake, of the kind that home-built boards do have.
 */
#define NONE 0
#define RELEASED_ON_EMPTY 1
#define RELEASED_TOO_SOON 2
#define RELEASED_TOO_LATE 3
#define NEVER_RELEASED 4
#define NEVER_ENABLED 5
#define ENABLED_TOO_LATE 6
#define LOOP_BLOCKS 7
#define LEDS_BLOCK 8
#define SMALL_RING 9
#define ADDRESS_LOST 12
#define RATE_OFF 13
#define STACK_TOO_DEEP 14
#define WATCHDOG_BITES 15
#define INTERRUPT_STAYS 16
#define WAITS_FOR_DISPLAY 17
#define BABBLES 18
#define DEAF_AFTER_REPLY 21
#define PRINTS_IN_INTERRUPT 22
#define HALF_CLOCK 23

#ifndef MISTAKE
#define MISTAKE NONE
#endif

#ifndef ADDRESS
#define ADDRESS 7
#endif

#if MISTAKE == RATE_OFF
#define DROPLINE_BAUD 115200
#else
#define DROPLINE_BAUD 250000
#endif

#define DROPLINE_DE_PORT PORTD
#define DROPLINE_DE_DDR DDRD
#define DROPLINE_DE_BIT PD2

#include "wrong.h"

#include <avr/eeprom.h>
#include <avr/wdt.h>
#include <util/delay.h>

static uint8_t boots __attribute__((section(".noinit")));
static volatile uint16_t ticks; /* of 100 us */
static struct dropline_control controls[1] = {{0, 0}};

ISR(TIMER0_COMPA_vect)
{
    ticks++;
#if MISTAKE == INTERRUPT_STAYS
    if (ticks == 15000) {
        while (ticks != 0) {
        }
    }
#endif
}

static uint16_t now(void)
{
    uint8_t was = SREG;
    cli();
    uint16_t seen = ticks;
    SREG = was;
    return seen;
}

static void lamp(uint16_t number, uint8_t width, uint32_t value)
{
    (void)width;
    if (number < 6) {
        if (value != 0) {
            PORTB |= (uint8_t)(1 << number);
        } else {
            PORTB &= (uint8_t)~(1 << number);
        }
    }
}

#if MISTAKE == STACK_TOO_DEEP
static uint8_t deep(uint8_t level)
{
    volatile uint8_t room[64];
    room[level & 63] = level;
    uint8_t below = level == 0 ? 0 : deep((uint8_t)(level - 1));
    return (uint8_t)(below + room[level & 63]);
}
#endif

static void every_20_ms(uint16_t count)
{
    (void)count;
#if MISTAKE == LOOP_BLOCKS
    _delay_ms(25);
#elif MISTAKE == SMALL_RING
    _delay_ms(3);
#elif MISTAKE == LEDS_BLOCK
    /* 100 addressable LEDs of 24 bits at 1.25 us */
    cli();
    _delay_us(3000);
    sei();
#elif MISTAKE == STACK_TOO_DEEP
    if (count == 40) {
        GPIOR0 = deep(30);
    }
#elif MISTAKE == WATCHDOG_BITES
    if (count % 50 == 49) {
        _delay_ms(40);
    }
#elif MISTAKE == WAITS_FOR_DISPLAY
    if (count == 60) {
        while ((TWCR & 1 << TWINT) == 0) {
        }
    }
#elif MISTAKE == BABBLES
    if (count % 10 == 0) {
        wrong_print("up ");
    }
#endif
}

int main(void)
{
    uint8_t cause = MCUSR;
    MCUSR = 0;
    wdt_disable();
    if (cause & 1 << PORF) {
        boots = 0;
    }
    boots++;
    DDRB = 0x3F;
    PORTC = 1;
    TCCR0A = 1 << WGM01;
    TCCR0B = 1 << CS01;
    OCR0A = 199;
    TIMSK0 = 1 << OCIE0A;
    dropline.address = ADDRESS;
#if MISTAKE == ADDRESS_LOST
    if ((cause & 1 << PORF) == 0) {
        dropline.address = ADDRESS + 1;
    }
#endif
    dropline.apply = lamp;
    dropline.controls = controls;
    dropline.control_count = CONTROLS;
    dropline.version_major = 1;
    dropline.version_minor = 0;
    dropline.boots = boots;
    dropline_begin();
#if MISTAKE == WATCHDOG_BITES
    wdt_enable(WDTO_30MS);
#endif
    sei();
    uint16_t loop = now();
    uint16_t last = loop;
    uint16_t count = 0;
    for (;;) {
        wdt_reset();
        dropline_loop();
        controls[0].value = (PINC & 1) == 0;
        uint16_t at = now();
        if (at - last >= 200) {
            last = at;
            every_20_ms(count++);
            dropline.refreshes++;
        }
        uint16_t took = (uint16_t)(now() - loop);
        loop = (uint16_t)(loop + took);
        if (took > dropline.longest_loop) {
            dropline.longest_loop = took;
        }
    }
}
