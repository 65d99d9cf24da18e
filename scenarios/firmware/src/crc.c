/* Nothing but a check over 64 bytes, 400,000 times, then sleep for good: how fast a processor is. */
#include <avr/interrupt.h>
#include <avr/io.h>
#include <avr/sleep.h>
#include <stdint.h>

#include "dropline_node.h"

static uint8_t bytes[64];

int main(void)
{
    for (uint16_t round = 0; round < 400; round++) {
        uint16_t sum = 0;
        for (uint16_t i = 0; i < 1000; i++) {
            sum ^= dropline_check(bytes, sizeof bytes);
            bytes[i & 63] = (uint8_t)sum;
        }
    }
    PORTB = 1;
    cli();
    sleep_enable();
    sleep_cpu();
    for (;;) {
    }
}
