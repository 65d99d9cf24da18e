package dropline.harness.wiring;

import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import dropline.bus.pit.Pit;
import dropline.harness.pitfile.PitFile;

/** A pit with one of everything that can be wired. */
final class HutPit {
    static final String TEXT = """
        pit: Skerrow Dunlin, side hut
        hubs:
          middle: {kind: board, adapter: 1 ms timer}
          fan: {kind: transceivers, adapter: 16 ms timer}
          tee: {kind: splitter, adapter: 1 ms timer}
        boards:
          small: {draws: 35 mA}
        transceivers:
          red: {terminator: 120 ohm, bias: 560 ohm}
          weak: {bias: 20 kohm}
        signals:
          heading: {number: 1, range: 0..359, unit: deg}
        segments:
          front: {baud: 250 kbaud, controller: {hub: middle}, order: [trim, controller, heat]}
          aft: {baud: 250 kbaud, controller: {hub: middle}}
          roof: {baud: 76.8 kbaud, topology: star, controller: {hub: fan, time-out: 100 ms}}
          floor: {baud: 19.2 kbaud, topology: star, bias: no, controller: {hub: tee, time-out: 100 ms}}
          desk: {baud: 76.8 kbaud, topology: direct, controller: {adapter: native USB, time-out: 50 ms}}
        nodes:
          trim:
            {segment: front, address: 1, board: small, transceiver: red, supply: left 12 V, connector: "5-way, keyed",
             firmware: trim <3>, passport: trim.yaml, profile: 8-bit loop}
          heat: {segment: front, address: 2, board: 8-bit one UART, supply: left 12 V, profile: 8-bit loop}
          oil: {segment: aft, address: 1, transceiver: red, profile: 8-bit loop}
          fuel: {segment: aft, address: 2, transceiver: red, profile: 8-bit loop}
          lamp: {segment: roof, address: 1, arm: left, transceiver: weak, profile: 8-bit loop}
          flood: {segment: roof, address: 2, arm: right, profile: 8-bit loop}
          pump-1: {segment: floor, address: 1, arm: one, profile: 8-bit loop}
          pump-2: {segment: floor, address: 2, arm: two, profile: 8-bit loop}
          pump-3: {segment: floor, address: 3, arm: two, profile: 8-bit loop}
          pump-4: {segment: floor, address: 4, arm: three, profile: 8-bit loop}
          clipboard: {segment: desk, address: 1, profile: 8-bit loop}
        panels:
          compass: {node: trim, draws: 90 mA, status: bench}
          slip indicator: {node: trim, status: planned}
          window heat: {node: heat, draws: about 1 A}
          dial:
            node: heat
            indicators:
              needle: {like: geared 5 V stepper, shows: heading, draws: 200 mA}
              lamp: {like: LED lamp, shows: heading}
          beacon:
            node: heat
            indicators:
              lamp: {like: LED lamp, shows: heading, draws: "20 mA, measured 2026-11-20"}
        """;

    private HutPit() {}

    static Pit pit() {
        return pit(TEXT);
    }

    static Pit pit(String text) {
        PitFile.Result result = PitFile.parse("hut.yaml", text);
        return assertInstanceOf(PitFile.Understood.class, result, result::toString)
                .pit();
    }
}
