package dropline.harness.plan;

import java.util.List;

/**
 * What a plan takes, as far as the pit file says.
 *
 * @param boards boards to get, whose panels are all planned, by kind
 * @param transceivers for those, and for the controllers of further segments, by kind
 * @param adapters further USB adapters, and hubs, by name
 * @param cable the pairs of all segments, one for each
 * @param wire the runs of all supplies, by gauge
 * @param supplies what each has to give
 * @param ports what each hub has to have
 */
public record ShoppingList(
        List<Item> boards,
        List<Item> transceivers,
        List<Item> adapters,
        List<PairLength> cable,
        List<WireLength> wire,
        List<Amps> supplies,
        List<Ports> ports) {
    public ShoppingList {
        boards = List.copyOf(boards);
        transceivers = List.copyOf(transceivers);
        adapters = List.copyOf(adapters);
        cable = List.copyOf(cable);
        wire = List.copyOf(wire);
        supplies = List.copyOf(supplies);
        ports = List.copyOf(ports);
    }

    /** So many of a kind; the kind is empty where the pit file does not say. */
    public record Item(String kind, int count) {}

    /**
     * A segment's cable.
     *
     * @param segment its name
     * @param metres stretches and stubs of which the length is known, m
     * @param unknown how many there are of which it is not
     */
    public record PairLength(String segment, double metres, int unknown) {}

    /** Conductor of one gauge, there and back, m. */
    public record WireLength(String gauge, double metres) {}

    /**
     * What a supply gives while a load lasts, and should be rated for so that a fifth is left (common practice).
     *
     * @param lasting at the worst load that lasts, as far as currents are stated, A
     * @param ratingWanted what that asks for, A
     * @param unknown how many currents on it are not stated, and so come on top
     */
    public record Amps(String supply, double lasting, double ratingWanted, int unknown) {}

    /** Ports of a hub that are in use. */
    public record Ports(String hub, int used) {}
}
