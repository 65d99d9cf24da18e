/*
 * The node's side on this computer, to be talked to: each line of hexadecimal bytes is heard, and what comes of it printed:
 * "apply NUMBER WIDTH VALUE" for each value, "reply BYTES", and "." at the end. The address is the first argument.
 */
#include "../src/dropline_node.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static void apply(uint16_t number, uint8_t width, uint32_t value)
{
    printf("apply %u %u %lu\n", number, width, (unsigned long)value);
}

static void work(struct dropline_node *node)
{
    uint8_t count = dropline_work(node);
    if (count > 0) {
        printf("reply");
        for (uint8_t i = 0; i < count; i++) {
            printf(" %02X", node->reply[i]);
        }
        printf("\n");
    }
}

int main(int count, char **arguments)
{
    static const struct dropline_control controls[2] = {{3, 1}, {9, 0xFFFE}};
    static struct dropline_node node;
    char line[8192];
    if (count != 2) {
        return 2;
    }
    node.address = (uint8_t)atoi(arguments[1]);
    node.apply = apply;
    node.controls = controls;
    node.control_count = 2;
    node.version_major = 1;
    node.version_minor = 4;
    node.boots = 5;
    node.longest_loop = 0x0102;
    node.refreshes = 77;
    while (fgets(line, sizeof line, stdin) != NULL) {
        for (char *next = strtok(line, " \n"); next != NULL; next = strtok(NULL, " \n")) {
            dropline_hear(&node, (uint8_t)strtoul(next, NULL, 16), 0);
            work(&node);
        }
        printf("errors %u\n.\n", node.errors);
        fflush(stdout);
        node.longest_loop = 0x0102;
    }
    return 0;
}
