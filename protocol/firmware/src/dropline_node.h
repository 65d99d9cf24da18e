/*
 * The node's side of Dropline frames, in portable C99. Nothing is allocated, nothing blocks, and no clock is read: bytes
 * come in by dropline_hear, usually from the receive interrupt, and a reply comes out of dropline_work, called from the
 * main loop. What puts the reply on the line, and lets go of it, is the board's: dropline_avr.h does it for an AVR.
 *
 * The frames are described at the class DroplineFrames, in the protocol module's sources.
 */
#ifndef DROPLINE_NODE_H
#define DROPLINE_NODE_H

#include <stdint.h>

#ifdef __cplusplus
extern "C" {
#endif

/* Bytes of the longest frame on the line, its end included. */
#define DROPLINE_LONGEST 62

/* Bytes that may wait for the main loop; a power of two. One place stays free. */
#ifndef DROPLINE_RING
#define DROPLINE_RING 64
#endif

/* A signal's value for this node, or for all: number, width in bytes (1, 2 or 4), value. */
typedef void (*dropline_apply)(uint16_t number, uint8_t width, uint32_t value);

struct dropline_control {
    uint16_t number; /* 0..255 */
    uint16_t value;
};

struct dropline_node {
    uint8_t address; /* 1..255 */
    dropline_apply apply;
    const struct dropline_control *controls;
    uint8_t control_count; /* at most 16 */
    uint8_t version_major;
    uint8_t version_minor;

    /* what every reply says of the board; the board may count, the node reads */
    uint8_t applied;
    uint8_t boots;
    volatile uint8_t errors;
    uint16_t longest_loop; /* in 100 us */
    uint8_t refreshes;

    volatile uint8_t ring[DROPLINE_RING];
    volatile uint8_t head;
    uint8_t tail;
    uint8_t frame[DROPLINE_LONGEST];
    uint8_t length;
    uint8_t spoilt;
    uint8_t reply[DROPLINE_LONGEST];
};

/* A byte has come; nonzero where the receiver found it wrong. May be called from an interrupt. */
void dropline_hear(struct dropline_node *node, uint8_t byte, uint8_t is_wrong);

/* Takes what has come. The answer is how many bytes of node->reply are to be sent now, 0 for none. */
uint8_t dropline_work(struct dropline_node *node);

/* CRC-16/IBM-3740 of a few bytes. */
uint16_t dropline_check(const uint8_t *bytes, uint8_t count);

#ifdef __cplusplus
}
#endif

#endif
