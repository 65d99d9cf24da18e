/*
 * An AVR's side of a pair: USART0, a transceiver whose driver is turned on by one pin, high, and its receiver off by the
 * same. Include it in one file of a program, after defining
 *
 *     DROPLINE_BAUD        bits a second
 *     DROPLINE_DE_PORT     PORTD and so on
 *     DROPLINE_DE_DDR      DDRD and so on
 *     DROPLINE_DE_BIT      0..7
 *
 * The driver is let go in the transmit-complete interrupt: after the last stop bit, and not before.
 */
#ifndef DROPLINE_AVR_H
#define DROPLINE_AVR_H

#include "dropline_node.h"

#include <avr/interrupt.h>
#include <avr/io.h>

static struct dropline_node dropline;
static volatile uint8_t dropline_sent;
static volatile uint8_t dropline_left;

/* Begins to listen. */
static inline void dropline_begin(void)
{
    uint16_t divisor = (uint16_t)((F_CPU / 4 / DROPLINE_BAUD - 1) / 2);
    DROPLINE_DE_PORT &= (uint8_t)~(1 << DROPLINE_DE_BIT);
    DROPLINE_DE_DDR |= 1 << DROPLINE_DE_BIT;
    UBRR0H = (uint8_t)(divisor >> 8);
    UBRR0L = (uint8_t)divisor;
    UCSR0A = 1 << U2X0;
    UCSR0C = 1 << UCSZ01 | 1 << UCSZ00;
    UCSR0B = 1 << RXCIE0 | 1 << TXCIE0 | 1 << RXEN0 | 1 << TXEN0;
}

/* Puts a reply on the line; returns at once. */
static inline void dropline_send(uint8_t count)
{
    dropline_sent = 0;
    dropline_left = count;
    DROPLINE_DE_PORT |= 1 << DROPLINE_DE_BIT;
    UCSR0B |= 1 << UDRIE0;
}

/* Called from the main loop, as often as it comes round. */
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
}

ISR(USART_UDRE_vect)
{
    UDR0 = dropline.reply[dropline_sent++];
    /* had interrupts been off for long, transmission was complete before this byte: that does not count any more */
    UCSR0A = (uint8_t)((UCSR0A & (1 << U2X0 | 1 << MPCM0)) | 1 << TXC0);
    if (--dropline_left == 0) {
        UCSR0B &= (uint8_t)~(1 << UDRIE0);
    }
}

ISR(USART_TX_vect)
{
    DROPLINE_DE_PORT &= (uint8_t)~(1 << DROPLINE_DE_BIT);
}

#endif
