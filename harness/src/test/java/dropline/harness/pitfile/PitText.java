package dropline.harness.pitfile;

import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import dropline.bus.pit.Pit;
import dropline.harness.problem.Problem;
import dropline.harness.problem.Problems;
import java.util.List;

/** A small pit that is right, for tests to spoil. */
final class PitText {
    static final String SMALL = """
        hubs:
          centre: {adapter: native USB}
        signals:
          heading: {unit: deg, range: 0..360, resolution: 0.5, wraps: yes, number: 1}
          airspeed: {unit: kt, range: 0..300, number: 2}
        segments:
          left:
            baud: 500 kbaud
            controller: {hub: centre}
        nodes:
          a: {segment: left, address: 1, profile: 8-bit loop}
          b: {segment: left, address: 2, profile: 32-bit}
        panels:
          compass:
            node: a
            indicators:
              card: {kind: gauge stepper, shows: heading, speed: 90 deg/s}
            controls:
              knob: {kind: encoder, number: 1}
          speed:
            node: b
            indicators:
              readout: {kind: digits, shows: airspeed, refresh-every: 50 ms, refresh-takes: 2 ms}
        """;

    private PitText() {}

    static Pit understood(String text) {
        PitFile.Result result = PitFile.parse("pit.yaml", text);
        return assertInstanceOf(PitFile.Understood.class, result, result::toString)
                .pit();
    }

    static List<Problem> problems(String text) {
        return assertInstanceOf(PitFile.Wrong.class, PitFile.parse("pit.yaml", text))
                .problems();
    }

    /** The small pit with one piece of text replaced. */
    static String with(String old, String replacement) {
        if (!SMALL.contains(old)) {
            throw new IllegalArgumentException("the small pit must hold what is replaced: text=" + old);
        }
        return SMALL.replace(old, replacement);
    }

    /** What is said of the small pit with one piece of text replaced. */
    static String message(String old, String replacement) {
        return Problems.text(problems(with(old, replacement)));
    }
}
