/*
 * A gauge stepper at the pins 8 to 11, four phases, six steps for each unit of signal 0, which is 0 to 99. A transceiver at RX
 * and TX, its driver enable and receiver enable together at pin 2.
 *
 * One step at a time, every two milliseconds, while the loop goes on: a move never keeps a reply waiting. With power it runs
 * back against its stop for as long as its whole range takes, since nothing tells where it stands.
 *
 * Keep fingers clear of what moves. Disconnect the supply before you change wiring, and never tie the board to USB and to an
 * external supply at once without isolation.
 */
#define DROPLINE_BAUD 250000
#define DROPLINE_DE_PORT PORTD
#define DROPLINE_DE_DDR DDRD
#define DROPLINE_DE_BIT 2
#include <dropline_avr.h>

static const uint16_t RANGE = 99 * 6;
static const uint32_t STEP_MICROS = 2000;

static uint16_t stands = RANGE;
static uint16_t wanted = 0;
static uint8_t boots __attribute__((section(".noinit")));

static void take(uint16_t number, uint8_t width, uint32_t value)
{
    (void)width;
    if (number == 0) {
        wanted = value > 99 ? RANGE : (uint16_t)(value * 6);
    }
}

static void step()
{
    static const uint8_t PHASES[4] = {0x3, 0x6, 0xC, 0x9};
    if (stands != wanted) {
        stands += stands < wanted ? 1 : -1;
        PORTB = (uint8_t)((PORTB & 0xF0) | PHASES[stands & 3]);
    }
}

void setup()
{
    DDRB |= 0x0F;
    dropline.address = 7;
    dropline.apply = take;
    dropline.version_major = 1;
    dropline.boots = ++boots;
    dropline_begin();
}

void loop()
{
    static uint32_t last = 0;
    dropline_loop();
    uint32_t now = micros();
    if (now - last >= STEP_MICROS) {
        last = now;
        step();
    }
}
