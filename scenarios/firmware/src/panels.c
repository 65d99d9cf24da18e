/*
 * A panel for an ATmega328P at 16 MHz that shows signal 0, 0 to 99, in one of several ways, built with -DSHOWS=NAME. In all
 * of them an encoder at PC0 and PC1, a selector of three positions at PC2 to PC4, and a lever at PC5 are controls 0 to 2.
 */
#define OLED 1
#define LCD 2
#define LCD_EXPANDER 3
#define EXPANDER 4
#define DIGITS 5
#define LEDS 6
#define STEPPER 7
#define REGISTER 8
#define STUCK_OLED 9

#define DROPLINE_BAUD 250000
#define DROPLINE_DE_PORT PORTD
#define DROPLINE_DE_DDR DDRD
#define DROPLINE_DE_BIT PD2

#include "dropline_avr.h"

#include <util/delay.h>

static struct dropline_control controls[3] = {{0, 0}, {1, 0}, {2, 0}};
static volatile uint16_t ticks; /* of 100 us */
static uint8_t boots __attribute__((section(".noinit")));
static uint8_t wanted;
static uint8_t is_new;

ISR(TIMER0_COMPA_vect)
{
    ticks++;
}

static uint16_t now(void)
{
    uint8_t was = SREG;
    cli();
    uint16_t seen = ticks;
    SREG = was;
    return seen;
}

static void take(uint16_t number, uint8_t width, uint32_t value)
{
    (void)width;
    if (number == 0) {
        wanted = (uint8_t)value;
        is_new = 1;
    }
}

#if SHOWS == OLED || SHOWS == STUCK_OLED || SHOWS == LCD_EXPANDER || SHOWS == EXPANDER
#define WAITED 2000

static uint8_t wait(void)
{
#if SHOWS == STUCK_OLED
    while ((TWCR & 1 << TWINT) == 0) {
    }
    return 1;
#else
    for (uint16_t i = 0; i < WAITED; i++) {
        if (TWCR & 1 << TWINT) {
            return 1;
        }
    }
    return 0;
#endif
}

static uint8_t twi(uint8_t byte)
{
    TWDR = byte;
    TWCR = 1 << TWINT | 1 << TWEN;
    uint8_t came = wait();
#if SHOWS == STUCK_OLED
    /* waits for an acknowledgement, for ever */
    while ((TWSR & 0xF8) == 0x20 || (TWSR & 0xF8) == 0x30) {
    }
#endif
    return came;
}

static void twi_begin(uint8_t address)
{
    TWCR = 1 << TWINT | 1 << TWSTA | 1 << TWEN;
    wait();
    twi((uint8_t)(address << 1));
}

static void twi_end(void)
{
    TWCR = 1 << TWINT | 1 << TWSTO | 1 << TWEN;
}
#endif

#if SHOWS == OLED || SHOWS == STUCK_OLED
static const uint8_t DIGIT[10][5] = {{0x3E, 0x51, 0x49, 0x45, 0x3E}, {0x00, 0x42, 0x7F, 0x40, 0x00},
    {0x42, 0x61, 0x51, 0x49, 0x46}, {0x21, 0x41, 0x45, 0x4B, 0x31}, {0x18, 0x14, 0x12, 0x7F, 0x10},
    {0x27, 0x45, 0x45, 0x45, 0x39}, {0x3C, 0x4A, 0x49, 0x49, 0x30}, {0x01, 0x71, 0x09, 0x05, 0x03},
    {0x36, 0x49, 0x49, 0x49, 0x36}, {0x06, 0x49, 0x49, 0x29, 0x1E}};

static void oled(uint8_t kind, const uint8_t *bytes, uint8_t count)
{
    twi_begin(0x3C);
    twi(kind);
    for (uint8_t i = 0; i < count; i++) {
        twi(bytes[i]);
    }
    twi_end();
    _delay_us(10);
}

static void begin(void)
{
    static const uint8_t SETTINGS[] = {0xAE, 0xA8, 0x3F, 0xD3, 0x00, 0x40, 0x8D, 0x14, 0x20, 0x00, 0x81, 0x80, 0xAF};
    TWBR = 12; /* 400 kHz */
    oled(0x00, SETTINGS, sizeof SETTINGS);
}

static void show(uint8_t value)
{
    static const uint8_t PLACE[] = {0x21, 0, 11, 0x22, 0, 0};
    uint8_t dots[12];
    for (uint8_t i = 0; i < 5; i++) {
        dots[i] = DIGIT[value / 10][i];
        dots[6 + i] = DIGIT[value % 10][i];
    }
    dots[5] = 0;
    dots[11] = 0;
    oled(0x00, PLACE, sizeof PLACE);
    oled(0x40, dots, sizeof dots);
}
#elif SHOWS == LCD || SHOWS == LCD_EXPANDER
static void nibble(uint8_t is_data, uint8_t upper)
{
#if SHOWS == LCD
    /* register at PB0, enable at PB1, data at PB2 to PB5 */
    PORTB = (uint8_t)(is_data | upper << 2);
    PORTB |= 1 << PB1;
    _delay_us(1);
    PORTB &= (uint8_t)~(1 << PB1);
    _delay_us(40);
#else
    /* a transfer for each change of the lines, as is common practice */
    uint8_t bits = (uint8_t)(upper << 4 | 0x08 | is_data);
    for (uint8_t i = 0; i < 3; i++) {
        twi_begin(0x27);
        twi(i == 1 ? bits | 0x04 : bits);
        twi_end();
        _delay_us(10);
    }
    _delay_us(40);
#endif
}

static void lcd(uint8_t is_data, uint8_t byte)
{
    nibble(is_data, byte >> 4);
    nibble(is_data, byte & 15);
}

static void begin(void)
{
#if SHOWS == LCD
    DDRB = 0x3F;
#else
    TWBR = 72; /* 100 kHz */
#endif
    _delay_ms(50);
    nibble(0, 3);
    _delay_ms(5);
    nibble(0, 3);
    nibble(0, 3);
    nibble(0, 2);
    lcd(0, 0x28);
    lcd(0, 0x0C);
    lcd(0, 0x01);
    _delay_ms(2);
    lcd(0, 0x06);
}

static void show(uint8_t value)
{
    lcd(0, 0x80 | 0x40);
    lcd(1, (uint8_t)('0' + value / 10));
    lcd(1, (uint8_t)('0' + value % 10));
}
#elif SHOWS == EXPANDER
/* lamps to plus, at the outputs of a PCF8574: one for each eighth */
static void begin(void)
{
    TWBR = 72;
}

static void show(uint8_t value)
{
    twi_begin(0x20);
    twi(value > 0 ? 0xFE : 0xFF);
    twi_end();
}
#elif SHOWS == DIGITS
static void digits(uint8_t place, uint8_t value)
{
    PORTB &= (uint8_t)~(1 << PB2);
    SPDR = place;
    while ((SPSR & 1 << SPIF) == 0) {
    }
    SPDR = value;
    while ((SPSR & 1 << SPIF) == 0) {
    }
    PORTB |= 1 << PB2;
}

static void begin(void)
{
    DDRB = 1 << PB2 | 1 << PB3 | 1 << PB5;
    SPCR = 1 << SPE | 1 << MSTR;
    digits(0x0C, 1);
    digits(0x09, 0xFF);
    digits(0x0B, 1);
}

static void show(uint8_t value)
{
    digits(1, value % 10);
    digits(2, value / 10);
}
#elif SHOWS == LEDS
static void begin(void)
{
    DDRB = 1 << PB0;
}

/* eight of them; a bit takes 20 cycles, high for 6 or for 13 of them */
static void show(uint8_t value)
{
    uint8_t was = SREG;
    cli();
    for (uint8_t i = 0; i < 24; i++) {
        uint8_t byte = i / 3 < value / 13 ? 0x20 : 0;
        for (uint8_t bit = 0; bit < 8; bit++) {
            if (byte & 0x80) {
                PORTB = 1;
                __builtin_avr_delay_cycles(11);
                PORTB = 0;
            } else {
                PORTB = 1;
                __builtin_avr_delay_cycles(4);
                PORTB = 0;
                __builtin_avr_delay_cycles(4);
            }
            byte = (uint8_t)(byte << 1);
        }
    }
    SREG = was;
}
#elif SHOWS == STEPPER
static uint16_t stands;

static void begin(void)
{
    DDRB = 0x0F;
}

static void show(uint8_t value)
{
    (void)value;
}

/* four full steps a turn of the phases, one every 2 ms; six steps for each unit */
static void step(void)
{
    static const uint8_t PHASE[4] = {0x3, 0x6, 0xC, 0x9};
    uint16_t to = (uint16_t)(wanted * 6);
    if (stands != to) {
        stands = (uint16_t)(stands + (stands < to ? 1 : -1));
        PORTB = PHASE[stands & 3];
    }
}
#else
static void begin(void)
{
}

static void show(uint8_t value)
{
    (void)value;
    _delay_us(500);
    GPIOR0 = dropline.applied;
}
#endif

static void read_controls(void)
{
    static const int8_t TURNED[16] = {0, 1, -1, 0, -1, 0, 0, 1, 1, 0, 0, -1, 0, -1, 1, 0};
    static uint8_t contacts;
    static int16_t quarters;
    contacts = (uint8_t)((contacts << 2 | ((uint8_t)~PINC & 3)) & 15);
    quarters = (int16_t)(quarters + TURNED[contacts]);
    controls[0].value = (uint16_t)((quarters + (quarters < 0 ? -1 : 1)) / 4);
    for (uint8_t i = 0; i < 3; i++) {
        if ((PINC & 1 << (PC2 + i)) == 0) {
            controls[1].value = i;
        }
    }
    if ((ADCSRA & 1 << ADSC) == 0) {
        controls[2].value = ADC;
        ADCSRA |= 1 << ADSC;
    }
}

int main(void)
{
    if (MCUSR & 1 << PORF) {
        boots = 0;
    }
    MCUSR = 0;
    boots++;
    PORTC = 0x1F;
    ADMUX = 1 << REFS0 | 5;
    ADCSRA = 1 << ADEN | 7;
    TCCR0A = 1 << WGM01;
    TCCR0B = 1 << CS01;
    OCR0A = 199;
    TIMSK0 = 1 << OCIE0A;
    dropline.address = 7;
    dropline.apply = take;
    dropline.controls = controls;
    dropline.control_count = 3;
    dropline.version_major = 1;
    dropline.boots = boots;
    sei();
    begin();
    dropline_begin();
    uint16_t last = now();
    uint16_t shown = last;
    for (;;) {
        dropline_loop();
        read_controls();
        if (now() - last >= 20) {
            last = now();
#if SHOWS == STEPPER
            step();
#endif
        }
        if (is_new || now() - shown >= 1000) {
            is_new = 0;
            shown = now();
            show(wanted);
            dropline.refreshes++;
        }
    }
}
