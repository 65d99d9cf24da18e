/* The library's own side of the pair, or the same with one mistake in it. */
#ifndef WRONG_H
#define WRONG_H

#ifndef CONTROLS
#define CONTROLS 0
#endif

#if MISTAKE == SMALL_RING
#define DROPLINE_RING 16
#endif

#if MISTAKE != RELEASED_ON_EMPTY && MISTAKE != RELEASED_TOO_SOON && MISTAKE != RELEASED_TOO_LATE \
    && MISTAKE != NEVER_RELEASED && MISTAKE != NEVER_ENABLED && MISTAKE != ENABLED_TOO_LATE \
    && MISTAKE != DEAF_AFTER_REPLY && MISTAKE != PRINTS_IN_INTERRUPT && MISTAKE != RATE_OFF && MISTAKE != HALF_CLOCK

#include "dropline_avr.h"

#else

#include "dropline_node.h"

#include <avr/interrupt.h>
#include <avr/io.h>
#include <util/delay.h>

static struct dropline_node dropline;
static volatile uint8_t dropline_sent;
static volatile uint8_t dropline_left;

static void driver(uint8_t is_on)
{
    if (is_on) {
        DROPLINE_DE_PORT |= 1 << DROPLINE_DE_BIT;
    } else {
        DROPLINE_DE_PORT &= (uint8_t)~(1 << DROPLINE_DE_BIT);
    }
}

static inline void dropline_begin(void)
{
    DROPLINE_DE_DDR |= 1 << DROPLINE_DE_BIT;
#if MISTAKE == RATE_OFF
    /* normal speed: 111111 in place of 115200 */
    UBRR0 = F_CPU / 16 / DROPLINE_BAUD - 1 + 1;
#elif MISTAKE == HALF_CLOCK
    /* as for a clock of 8 MHz */
    UBRR0 = 8000000UL / 16 / DROPLINE_BAUD - 1;
#else
    UCSR0A = 1 << U2X0;
    UBRR0 = F_CPU / 8 / DROPLINE_BAUD - 1;
#endif
    UCSR0C = 1 << UCSZ01 | 1 << UCSZ00;
    UCSR0B = 1 << RXCIE0 | 1 << TXCIE0 | 1 << RXEN0 | 1 << TXEN0;
}

static inline void dropline_send(uint8_t count)
{
    dropline_sent = 0;
    dropline_left = count;
#if MISTAKE == ENABLED_TOO_LATE
    UCSR0B |= 1 << UDRIE0;
    _delay_us(60);
    driver(1);
#elif MISTAKE == RELEASED_TOO_SOON
    driver(1);
    while (dropline_left > 0) {
        while ((UCSR0A & 1 << UDRE0) == 0) {
        }
        UDR0 = dropline.reply[dropline_sent++];
        dropline_left--;
    }
    _delay_us(20);
    driver(0);
#elif MISTAKE == RELEASED_TOO_LATE
    driver(1);
    UCSR0B |= 1 << UDRIE0;
    while (dropline_left > 0) {
    }
    _delay_ms(5);
    driver(0);
#else
#if MISTAKE != NEVER_ENABLED
    driver(1);
#endif
    UCSR0B |= 1 << UDRIE0;
#endif
}

static inline void dropline_loop(void)
{
    if (dropline_left == 0) {
        uint8_t count = dropline_work(&dropline);
        if (count > 0) {
            dropline_send(count);
        }
    }
}

ISR(USART_RX_vect)
{
    uint8_t is_wrong = UCSR0A & (1 << FE0 | 1 << DOR0 | 1 << UPE0);
    dropline_hear(&dropline, UDR0, is_wrong);
#if MISTAKE == PRINTS_IN_INTERRUPT
    /* as a print over a slow software port would take */
    _delay_us(150);
#endif
}

ISR(USART_UDRE_vect)
{
    UDR0 = dropline.reply[dropline_sent++];
    /* had interrupts been off for long, transmission was complete before this byte: that does not count any more */
    UCSR0A = (uint8_t)((UCSR0A & (1 << U2X0 | 1 << MPCM0)) | 1 << TXC0);
    if (--dropline_left == 0) {
        UCSR0B &= (uint8_t)~(1 << UDRIE0);
#if MISTAKE == RELEASED_ON_EMPTY
        driver(0);
#endif
    }
}

ISR(USART_TX_vect)
{
#if MISTAKE == DEAF_AFTER_REPLY
    driver(0);
    UCSR0B &= (uint8_t)~(1 << RXEN0);
    _delay_ms(8);
    UCSR0B |= 1 << RXEN0;
#elif MISTAKE != NEVER_RELEASED && MISTAKE != RELEASED_ON_EMPTY && MISTAKE != RELEASED_TOO_LATE \
    && MISTAKE != RELEASED_TOO_SOON
    driver(0);
#endif
}

#endif

#if MISTAKE == BABBLES
static void wrong_print(const char *text)
{
    DROPLINE_DE_PORT |= 1 << DROPLINE_DE_BIT;
    for (; *text != 0; text++) {
        while ((UCSR0A & 1 << UDRE0) == 0) {
        }
        UDR0 = (uint8_t)*text;
    }
}
#endif

#endif
