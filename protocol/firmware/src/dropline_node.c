#include "dropline_node.h"

enum { POLL = 0x01, STATE = 0x02, QUESTION = 0x03, REPLY = 0x81, IDENTITY = 0x83 };

/* Type, address, sequence. */
#define HEADER 3
#define CHECK 2

uint16_t dropline_check(const uint8_t *bytes, uint8_t count)
{
    uint16_t sum = 0xFFFF;
    for (uint8_t i = 0; i < count; i++) {
        /* the polynomial 0x1021 taken eight bits at a time */
        sum = (uint16_t)(sum >> 8 | sum << 8);
        sum ^= bytes[i];
        sum ^= (uint8_t)(sum & 0xFF) >> 4;
        sum ^= (uint16_t)(sum << 12);
        sum ^= (uint16_t)((sum & 0xFF) << 5);
    }
    return sum;
}

void dropline_hear(struct dropline_node *node, uint8_t byte, uint8_t is_wrong)
{
    uint8_t next = (uint8_t)((node->head + 1) & (DROPLINE_RING - 1));
    if (is_wrong || next == node->tail) {
        node->errors++;
    }
    if (next != node->tail) {
        node->ring[node->head] = byte;
        node->head = next;
    }
}

/* Undoes the byte stuffing where it stands; the answer is the payload's length, 0 where it is none. */
static uint8_t unstuffed(uint8_t *bytes, uint8_t count)
{
    uint8_t from = 0;
    uint8_t to = 0;
    while (from < count) {
        uint8_t code = bytes[from++];
        if (code == 0 || from + code - 1 > count) {
            return 0;
        }
        for (uint8_t i = 1; i < code; i++) {
            bytes[to++] = bytes[from++];
        }
        if (from < count) {
            bytes[to++] = 0;
        }
    }
    return to;
}

/* Checks and stuffs a payload that stands in the reply from its second byte on. */
static uint8_t finished(uint8_t *reply, uint8_t length)
{
    uint16_t check = dropline_check(reply + 1, length);
    uint8_t code_at = 0;
    uint8_t end = (uint8_t)(length + 1);
    reply[end++] = (uint8_t)(check >> 8);
    reply[end++] = (uint8_t)check;
    for (uint8_t i = 1; i < end; i++) {
        if (reply[i] == 0) {
            reply[code_at] = (uint8_t)(i - code_at);
            code_at = i;
        }
    }
    reply[code_at] = (uint8_t)(end - code_at);
    reply[end++] = 0;
    return end;
}

static uint8_t status(const struct dropline_node *node, uint8_t type)
{
    uint8_t *out = (uint8_t *)node->reply + 1;
    out[0] = type;
    out[1] = node->address;
    out[2] = node->applied;
    out[3] = node->boots;
    out[4] = node->errors;
    out[5] = (uint8_t)(node->longest_loop >> 8);
    out[6] = (uint8_t)node->longest_loop;
    out[7] = node->refreshes;
    return 8;
}

static uint8_t reply(struct dropline_node *node)
{
    uint8_t length = status(node, REPLY);
    for (uint8_t i = 0; i < node->control_count; i++) {
        uint8_t *out = node->reply + 1 + length;
        out[0] = (uint8_t)node->controls[i].number;
        out[1] = (uint8_t)(node->controls[i].value >> 8);
        out[2] = (uint8_t)node->controls[i].value;
        length = (uint8_t)(length + 3);
    }
    node->longest_loop = 0;
    return finished(node->reply, length);
}

static uint8_t identity(struct dropline_node *node)
{
    uint8_t length = status(node, IDENTITY);
    node->reply[1 + length++] = node->version_major;
    node->reply[1 + length++] = node->version_minor;
    return finished(node->reply, length);
}

static void apply(struct dropline_node *node, const uint8_t *entries, uint8_t count)
{
    uint8_t at = 0;
    while (at + 2 < count) {
        uint8_t kind = entries[at] >> 6;
        uint8_t width = (uint8_t)(1 << kind);
        uint16_t number = (uint16_t)((entries[at] & 0x3F) << 8 | entries[at + 1]);
        uint32_t value = 0;
        at = (uint8_t)(at + 2);
        if (kind > 2 || at + width > count) {
            return;
        }
        for (uint8_t i = 0; i < width; i++) {
            value = value << 8 | entries[at++];
        }
        node->apply(number, width, value);
    }
}

static uint8_t understood(struct dropline_node *node)
{
    uint8_t *frame = node->frame;
    uint8_t length = unstuffed(frame, node->length);
    if (length < HEADER + CHECK) {
        return 0;
    }
    length = (uint8_t)(length - CHECK);
    if (dropline_check(frame, length) != (uint16_t)(frame[length] << 8 | frame[length + 1])) {
        node->errors++;
        return 0;
    }
    if (frame[0] == STATE && frame[1] == 0) {
        apply(node, frame + HEADER, (uint8_t)(length - HEADER));
        if (frame[2] == (uint8_t)(node->applied + 1)) {
            node->applied++;
        }
        return 0;
    }
    if (frame[1] != node->address) {
        return 0;
    }
    if (frame[0] == QUESTION) {
        return identity(node);
    }
    if (frame[0] == POLL) {
        uint8_t answer = reply(node);
        apply(node, frame + HEADER, (uint8_t)(length - HEADER));
        node->applied = frame[2];
        return answer;
    }
    return 0;
}

uint8_t dropline_work(struct dropline_node *node)
{
    while (node->tail != node->head) {
        uint8_t byte = node->ring[node->tail];
        node->tail = (uint8_t)((node->tail + 1) & (DROPLINE_RING - 1));
        if (byte == 0) {
            uint8_t answer = node->spoilt || node->length == 0 ? 0 : understood(node);
            node->length = 0;
            node->spoilt = 0;
            if (answer > 0) {
                return answer;
            }
        } else if (node->length < DROPLINE_LONGEST) {
            node->frame[node->length++] = byte;
        } else {
            node->spoilt = 1;
        }
    }
    return 0;
}
