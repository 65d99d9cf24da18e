/*
 * A number of two digits, signal 0, on a monochrome display with an SSD1306 at the two-wire bus (A4, A5), address 0x3C. A
 * transceiver at RX and TX, its driver enable and receiver enable together at pin 2.
 *
 * A display is slow: here one digit takes some 0.3 ms, one is sent in each round of the loop, and a display that does not
 * answer costs no more than the bus's time-out. Replies come from the loop, so they wait no longer than that. One digit is
 * sent again every 100 ms, so that a display that has lost it for a moment comes back.
 *
 * Disconnect the supply before you change wiring, and never tie the board to USB and to an external supply at once without
 * isolation.
 */
#include <Wire.h>

#define DROPLINE_BAUD 250000
#define DROPLINE_DE_PORT PORTD
#define DROPLINE_DE_DDR DDRD
#define DROPLINE_DE_BIT 2
#include <dropline_avr.h>

static const uint8_t DIGITS[10][5] = {{0x3E, 0x51, 0x49, 0x45, 0x3E}, {0x00, 0x42, 0x7F, 0x40, 0x00},
    {0x42, 0x61, 0x51, 0x49, 0x46}, {0x21, 0x41, 0x45, 0x4B, 0x31}, {0x18, 0x14, 0x12, 0x7F, 0x10},
    {0x27, 0x45, 0x45, 0x45, 0x39}, {0x3C, 0x4A, 0x49, 0x49, 0x30}, {0x01, 0x71, 0x09, 0x05, 0x03},
    {0x36, 0x49, 0x49, 0x49, 0x36}, {0x06, 0x49, 0x49, 0x29, 0x1E}};

static uint8_t wanted = 0;
static uint8_t shown[2] = {0xFF, 0xFF};
static uint8_t boots __attribute__((section(".noinit")));

static void take(uint16_t number, uint8_t width, uint32_t value)
{
    (void)width;
    if (number == 0) {
        wanted = value > 99 ? 99 : (uint8_t)value;
    }
}

static void command(const uint8_t *bytes, uint8_t count)
{
    Wire.beginTransmission(0x3C);
    Wire.write((uint8_t)0x00);
    Wire.write(bytes, count);
    Wire.endTransmission();
}

/* Sends the first digit that is not what it should be. */
static void refresh()
{
    uint8_t digits[2] = {(uint8_t)(wanted / 10), (uint8_t)(wanted % 10)};
    for (uint8_t i = 0; i < 2; i++) {
        if (shown[i] != digits[i]) {
            const uint8_t place[] = {0x21, (uint8_t)(6 * i), (uint8_t)(6 * i + 4), 0x22, 0, 0};
            command(place, sizeof place);
            Wire.beginTransmission(0x3C);
            Wire.write((uint8_t)0x40);
            Wire.write(DIGITS[digits[i]], 5);
            Wire.endTransmission();
            shown[i] = digits[i];
            dropline.refreshes++;
            return;
        }
    }
}

void setup()
{
    const uint8_t settings[] = {0xAE, 0xA8, 0x3F, 0xD3, 0x00, 0x40, 0x8D, 0x14, 0x20, 0x00, 0xAF};
    Wire.begin();
    Wire.setClock(400000);
    Wire.setWireTimeout(2000, true);
    command(settings, sizeof settings);
    dropline.address = 7;
    dropline.apply = take;
    dropline.version_major = 1;
    dropline.boots = ++boots;
    dropline_begin();
}

void loop()
{
    static uint32_t sent = 0;
    static uint8_t next = 0;
    dropline_loop();
    if (millis() - sent >= 100) {
        sent = millis();
        next ^= 1;
        shown[next] = 0xFF;
    }
    refresh();

    static uint32_t before = micros();
    uint32_t now = micros();
    uint16_t took = (uint16_t)((now - before) / 100);
    before = now;
    if (took > dropline.longest_loop) {
        dropline.longest_loop = took;
    }
}
