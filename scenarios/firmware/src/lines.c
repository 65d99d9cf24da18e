/*
 * A panel for an ATmega328P at 16 MHz that speaks lines of text, as scenarios/layouts/lines.yaml describes them: asked with
 * ?07*38 it answers =07*3A, and takes !00;001=+0001*CK for its lamp on PB0. 250000 baud, the driver on PD2.
 */
#include <avr/interrupt.h>
#include <avr/io.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#define LONGEST 60

static char line[LONGEST + 1];
static volatile uint8_t length;
static volatile uint8_t is_whole;
static uint8_t is_spoilt;
static char answer[12];
static volatile uint8_t sent;
static volatile uint8_t left;

static uint8_t check(const char *text, uint8_t count)
{
    uint8_t sum = 0;
    for (uint8_t i = 0; i < count; i++) {
        sum ^= (uint8_t)text[i];
    }
    return sum;
}

static char hex(uint8_t digit)
{
    return (char)(digit < 10 ? '0' + digit : 'A' - 10 + digit);
}

static uint8_t value(char digit)
{
    return (uint8_t)(digit >= '0' && digit <= '9' ? digit - '0' : digit >= 'A' && digit <= 'F' ? digit - 'A' + 10 : 16);
}

static uint8_t is_sound(uint8_t count)
{
    /* what is checked, a star, two digits, a carriage return */
    if (count < 7 || line[count - 1] != '\r' || line[count - 4] != '*') {
        return 0;
    }
    uint8_t high = value(line[count - 3]);
    uint8_t low = value(line[count - 2]);
    return high < 16 && low < 16 && (high << 4 | low) == check(line, (uint8_t)(count - 4));
}

static void answers(void)
{
    strcpy(answer, "=07*");
    uint8_t sum = check(answer, 3);
    answer[4] = hex(sum >> 4);
    answer[5] = hex(sum & 15);
    answer[6] = '\r';
    answer[7] = '\n';
    sent = 0;
    left = 8;
    PORTD |= 1 << PD2;
    UCSR0B |= 1 << UDRIE0;
}

static void understood(uint8_t count)
{
    if (!is_sound(count)) {
        return;
    }
    if (line[0] == '?' && count == 7 && line[1] == '0' && line[2] == '7') {
        answers();
    } else if (line[0] == '!' && line[1] == '0' && line[2] == '0') {
        for (uint8_t at = 3; at + 9 < count && line[at] == ';'; at = (uint8_t)(at + 10)) {
            if (atoi(line + at + 1) == 1) {
                PORTB = atoi(line + at + 5) != 0;
            }
        }
    }
}

ISR(USART_RX_vect)
{
    uint8_t is_wrong = UCSR0A & (1 << FE0 | 1 << DOR0 | 1 << UPE0);
    char byte = (char)UDR0;
    is_spoilt |= is_wrong != 0 || is_whole;
    if (byte == '\n') {
        is_whole = !is_spoilt;
        length = is_spoilt ? 0 : length;
        is_spoilt = 0;
    } else if (length < LONGEST) {
        line[length++] = byte;
    } else {
        is_spoilt = 1;
    }
}

ISR(USART_UDRE_vect)
{
    UDR0 = (uint8_t)answer[sent++];
    UCSR0A = 1 << U2X0 | 1 << TXC0;
    if (--left == 0) {
        UCSR0B &= (uint8_t)~(1 << UDRIE0);
    }
}

ISR(USART_TX_vect)
{
    PORTD &= (uint8_t)~(1 << PD2);
}

int main(void)
{
    DDRB = 1;
    DDRD = 1 << PD2;
    UBRR0 = F_CPU / 8 / 250000 - 1;
    UCSR0A = 1 << U2X0;
    UCSR0B = 1 << RXCIE0 | 1 << TXCIE0 | 1 << RXEN0 | 1 << TXEN0;
    sei();
    for (;;) {
        if (is_whole) {
            line[length] = 0;
            understood(length);
            length = 0;
            is_whole = 0;
        }
    }
}
