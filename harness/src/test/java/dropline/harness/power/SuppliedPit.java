package dropline.harness.power;

import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import dropline.bus.pit.Pit;
import dropline.harness.pitfile.PitFile;

/** Pits on one supply of 12 V and 10 A, as text with indicators to fill in. */
final class SuppliedPit {
    private static final String TEXT = """
        pit: Supplied
        supplies:
          main:
            volts: 12 V
            rating: 10 A
            runs:
              cable: {wire: 18 AWG, strand: solid, length: 2 m}
        signals:
          lamp: {range: 0..1, number: 1}
          level: {range: 0..100, number: 2}
          dial: {range: 0..100, number: 3}
        segments:
          bus: {baud: 250 kbaud, controller: {adapter: none}}
        nodes:
        NODES
        panels:
        PANELS
        """;

    private SuppliedPit() {}

    /** One board of 100 mA with a linear regulator, that is up after a second, with these indicators. */
    static Pit with(String indicators) {
        return of(board("a", 1), panel("a", indicators));
    }

    /** So many boards alike, at the addresses from 1 on. */
    static Pit boards(int count, String indicators) {
        StringBuilder nodes = new StringBuilder();
        StringBuilder panels = new StringBuilder();
        for (int i = 1; i <= count; i++) {
            nodes.append(board("b" + i, i));
            panels.append(panel("b" + i, indicators));
        }
        return of(nodes.toString(), panels.toString());
    }

    private static Pit of(String nodes, String panels) {
        String text = TEXT.replace("NODES\n", nodes).replace("PANELS\n", panels);
        PitFile.Result result = PitFile.parse("pit.yaml", text);
        return assertInstanceOf(PitFile.Understood.class, result, result::toString)
                .pit();
    }

    private static String board(String name, int address) {
        return "  " + name + ": {segment: bus, address: " + address + ", supply: cable, profile: {reply-gap: 100 us,"
                + " boot: 1 s}, board: {draws: 100 mA, converter: linear, works-down-to: 7 V}}\n";
    }

    private static String panel(String node, String indicators) {
        return "  panel " + node + ": {node: " + node + ", indicators: {" + indicators + "}}\n";
    }
}
