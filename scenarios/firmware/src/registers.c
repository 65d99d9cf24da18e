/*
 * A Modbus RTU panel for an ATmega328P at 16 MHz: eight registers, functions 3, 6 and 16, 19200 baud with even parity, the
 * driver on PD2. A frame ends with three and a half characters of silence, measured by timer 1; one and a half characters
 * within a frame are not looked for (MODBUS over serial line V1.02, section 2.5.1.1, asks for both).
 */
#include <avr/interrupt.h>
#include <avr/io.h>
#include <stdint.h>

#ifndef ADDRESS
#define ADDRESS 7
#endif
#define BAUD 19200UL
#define LONGEST 64
#define REGISTERS 8

#if defined(SHORT_SILENCE)
/* one and a half characters, taken for the end of a frame */
#define SILENCE_TENTHS 15
#else
#define SILENCE_TENTHS 35
#endif

enum { READ = 3, WRITE_ONE = 6, WRITE = 16, ILLEGAL_FUNCTION = 1, ILLEGAL_ADDRESS = 2 };

static uint8_t frame[LONGEST];
static uint8_t length;
static uint8_t is_spoilt;
static uint8_t sent;
static uint16_t registers[REGISTERS];

static uint16_t check(const uint8_t *bytes, uint8_t count)
{
    uint16_t sum = 0xFFFF;
    for (uint8_t i = 0; i < count; i++) {
        sum ^= bytes[i];
        for (uint8_t bit = 0; bit < 8; bit++) {
            sum = sum & 1 ? sum >> 1 ^ 0xA001 : sum >> 1;
        }
    }
    return sum;
}

static uint16_t word(uint8_t at)
{
    return (uint16_t)(frame[at] << 8 | frame[at + 1]);
}

static uint8_t refused(uint8_t why)
{
    frame[1] |= 0x80;
    frame[2] = why;
    return 3;
}

/* Turns the request in the frame into its answer; the answer is how long that is, without its check. */
static uint8_t answered(void)
{
    uint16_t first = word(2);
    uint16_t count = word(4);
    if (frame[1] == READ) {
        if (count == 0 || first >= REGISTERS || count > REGISTERS - first) {
            return refused(ILLEGAL_ADDRESS);
        }
        frame[2] = (uint8_t)(2 * count);
        for (uint8_t i = 0; i < count; i++) {
            frame[3 + 2 * i] = (uint8_t)(registers[first + i] >> 8);
            frame[4 + 2 * i] = (uint8_t)registers[first + i];
        }
        return (uint8_t)(3 + 2 * count);
    }
    if (frame[1] == WRITE_ONE) {
        if (first >= REGISTERS) {
            return refused(ILLEGAL_ADDRESS);
        }
        registers[first] = count;
        PORTB = (uint8_t)(registers[0] & 1);
        return 6;
    }
    if (frame[1] == WRITE) {
        if (count == 0 || first >= REGISTERS || count > REGISTERS - first || length != 9 + 2 * count) {
            return refused(ILLEGAL_ADDRESS);
        }
        for (uint8_t i = 0; i < count; i++) {
            registers[first + i] = word((uint8_t)(7 + 2 * i));
        }
        PORTB = (uint8_t)(registers[0] & 1);
        return 6;
    }
    return refused(ILLEGAL_FUNCTION);
}

static void understood(void)
{
    if (is_spoilt || length < 8) {
        return;
    }
    if (check(frame, (uint8_t)(length - 2)) != (uint16_t)(frame[length - 1] << 8 | frame[length - 2])) {
        return;
    }
    if (frame[0] != ADDRESS && frame[0] != 0) {
        return;
    }
    uint8_t is_to_all = frame[0] == 0;
    uint8_t count = answered();
    if (is_to_all) {
        return;
    }
    uint16_t sum = check(frame, count);
    frame[count] = (uint8_t)sum;
    frame[count + 1] = (uint8_t)(sum >> 8);
    length = (uint8_t)(count + 2);
    sent = 0;
    PORTD |= 1 << PD2;
    UCSR0B |= 1 << UDRIE0;
}

ISR(USART_RX_vect)
{
    uint8_t is_wrong = UCSR0A & (1 << FE0 | 1 << DOR0 | 1 << UPE0);
    uint8_t byte = UDR0;
    if (length < LONGEST) {
        frame[length++] = byte;
    } else {
        is_spoilt = 1;
    }
    is_spoilt |= is_wrong != 0;
    TCNT1 = 0;
    TIFR1 = 1 << OCF1A;
    TIMSK1 = 1 << OCIE1A;
}

ISR(TIMER1_COMPA_vect)
{
    TIMSK1 = 0;
    understood();
    if ((UCSR0B & 1 << UDRIE0) == 0) {
        length = 0;
    }
    is_spoilt = 0;
}

ISR(USART_UDRE_vect)
{
    UDR0 = frame[sent++];
    UCSR0A = 1 << TXC0;
    if (sent == length) {
        UCSR0B &= (uint8_t)~(1 << UDRIE0);
        length = 0;
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
    UBRR0 = F_CPU / 16 / BAUD - 1;
    UCSR0C = 1 << UPM01 | 1 << UCSZ01 | 1 << UCSZ00;
    UCSR0B = 1 << RXCIE0 | 1 << TXCIE0 | 1 << RXEN0 | 1 << TXEN0;
    /* counted in eighths of a cycle from the last stop bit on: a character has eleven bits */
    TCCR1B = 1 << CS11;
    OCR1A = (uint16_t)(F_CPU / 8 * 11 * SILENCE_TENTHS / 10 / BAUD);
    sei();
    for (;;) {
    }
}
