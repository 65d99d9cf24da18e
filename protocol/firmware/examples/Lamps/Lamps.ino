/*
 * Six lamps on the pins 8 to 13, for the signals 0 to 5, and a switch between pin A0 and ground, control 0. A transceiver at
 * RX and TX, its driver enable and receiver enable together at pin 2.
 *
 * Disconnect the supply before you change wiring, and never tie the board to USB and to an external supply at once without
 * isolation.
 */
#define DROPLINE_BAUD 250000
#define DROPLINE_DE_PORT PORTD
#define DROPLINE_DE_DDR DDRD
#define DROPLINE_DE_BIT 2
#include <dropline_avr.h>

static dropline_control controls[] = {{0, 0}};

/* Outlives a reset, so that the controller sees restarts. */
static uint8_t boots __attribute__((section(".noinit")));

static void lamp(uint16_t number, uint8_t width, uint32_t value)
{
    (void)width;
    if (number < 6) {
        digitalWrite(8 + number, value != 0 ? HIGH : LOW);
    }
}

void setup()
{
    for (uint8_t pin = 8; pin < 14; pin++) {
        pinMode(pin, OUTPUT);
    }
    pinMode(A0, INPUT_PULLUP);
    dropline.address = 7;
    dropline.apply = lamp;
    dropline.controls = controls;
    dropline.control_count = 1;
    dropline.version_major = 1;
    dropline.boots = ++boots;
    dropline_begin();
}

void loop()
{
    controls[0].value = digitalRead(A0) == LOW;
    dropline_loop();

    static uint32_t before = micros();
    uint32_t now = micros();
    uint16_t took = (uint16_t)((now - before) / 100);
    before = now;
    if (took > dropline.longest_loop) {
        dropline.longest_loop = took;
    }
}
