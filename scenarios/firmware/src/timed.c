/*
 * A program for an ATmega328P at 16 MHz that times itself: 1.5 ms of work every 20 ms, 0.3 ms with interrupts off every
 * 100 ms, and once a second prints what it knows, at 38,400 baud.
 */
#include <avr/interrupt.h>
#include <avr/io.h>
#include <util/delay.h>

static volatile uint16_t overflows;

ISR(TIMER1_OVF_vect)
{
    overflows++;
}

static uint32_t micros(void)
{
    uint8_t was = SREG;
    cli();
    uint16_t low = TCNT1;
    uint16_t high = overflows;
    if ((TIFR1 & 1 << TOV1) && low < 0x8000) {
        high++;
    }
    SREG = was;
    return ((uint32_t)high << 16 | low) / 2;
}

#define DROPLINE_TIME_NOW() micros()
#include "dropline_time.h"

static void put(char character)
{
    while ((UCSR0A & 1 << UDRE0) == 0) {
    }
    UDR0 = (uint8_t)character;
}

static void refresh(void)
{
    _delay_us(1500);
}

static void show_leds(void)
{
    cli();
    _delay_us(300);
    sei();
}

int main(void)
{
    UBRR0 = 25; /* 38,400 baud, +0.2 % */
    UCSR0C = 1 << UCSZ01 | 1 << UCSZ00;
    UCSR0B = 1 << TXEN0;
    TCCR1B = 1 << CS11;
    TIMSK1 = 1 << TOIE1;
    sei();
    put('u');
    put('p');
    put('\n');
    uint32_t refreshed = 0;
    uint32_t shown = 0;
    uint32_t printed = 0;
    for (;;) {
        uint32_t now = micros();
        if (now - refreshed >= 20000) {
            refreshed += 20000;
            DROPLINE_TIME("display", refresh());
        }
        if (now - shown >= 100000) {
            shown += 100000;
            DROPLINE_TIME_OFF("leds", show_leds());
        }
        if (now - printed >= 1000000) {
            printed += 1000000;
            dropline_time_print(put);
        }
    }
}
