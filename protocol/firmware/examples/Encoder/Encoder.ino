/*
 * An encoder between the pins A0 and A1 and ground, control 0, which counts its steps; its push button between A2 and ground,
 * control 1, which counts presses. A transceiver at RX and TX, its driver enable and receiver enable together at pin 2.
 *
 * The encoder is read in an interrupt once a millisecond, so that nothing in the loop makes it miss a quarter of a step.
 *
 * Disconnect the supply before you change wiring, and never tie the board to USB and to an external supply at once without
 * isolation.
 */
#define DROPLINE_BAUD 250000
#define DROPLINE_DE_PORT PORTD
#define DROPLINE_DE_DDR DDRD
#define DROPLINE_DE_BIT 2
#include <dropline_avr.h>

static dropline_control controls[] = {{0, 0}, {1, 0}};
static volatile int16_t quarters;
static uint8_t boots __attribute__((section(".noinit")));

static void take(uint16_t number, uint8_t width, uint32_t value)
{
    (void)number;
    (void)width;
    (void)value;
}

/* Timer 0 is the core's clock, about a millisecond a round; its compare match is free. */
ISR(TIMER0_COMPA_vect)
{
    static const int8_t TURNED[16] = {0, 1, -1, 0, -1, 0, 0, 1, 1, 0, 0, -1, 0, -1, 1, 0};
    static uint8_t contacts;
    contacts = (uint8_t)((contacts << 2 | ((uint8_t)~PINC & 3)) & 15);
    quarters += TURNED[contacts];
}

void setup()
{
    pinMode(A0, INPUT_PULLUP);
    pinMode(A1, INPUT_PULLUP);
    pinMode(A2, INPUT_PULLUP);
    OCR0A = 128;
    TIMSK0 |= 1 << OCIE0A;
    dropline.address = 7;
    dropline.apply = take;
    dropline.controls = controls;
    dropline.control_count = 2;
    dropline.version_major = 1;
    dropline.boots = ++boots;
    dropline_begin();
}

void loop()
{
    static bool is_down = false;
    static uint32_t since = 0;
    dropline_loop();

    noInterrupts();
    int16_t turned = quarters;
    interrupts();
    controls[0].value = (uint16_t)((turned + (turned < 0 ? -1 : 1)) / 4);

    /* a contact counts once it has been still for five milliseconds */
    bool reads_down = digitalRead(A2) == LOW;
    uint32_t now = millis();
    if (reads_down == is_down) {
        since = now;
    } else if (now - since >= 5) {
        is_down = reads_down;
        since = now;
        if (is_down) {
            controls[1].value++;
        }
    }
}
