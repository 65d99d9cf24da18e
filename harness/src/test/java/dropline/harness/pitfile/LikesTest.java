package dropline.harness.pitfile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.chance.Distribution;
import dropline.bus.pit.Control;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Node;
import dropline.bus.pit.Panel;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Profile;
import dropline.bus.pit.Transceiver;
import dropline.harness.problem.Problem;
import java.util.List;
import org.junit.jupiter.api.Test;

final class LikesTest {
    private static final String NODE_A = "a: {segment: left, address: 1, profile: 8-bit loop}";

    @Test
    void aNodeIsLikeItsKindWithItsOwnKeysOnTop() {
        Node node = node("a: {like: gauge, address: 1, weight: 2}", """
                kinds:
                  nodes:
                    gauge: {segment: left, weight: 3, profile: {like: 8-bit loop, boot: 3 s}}
                """);

        assertEquals(2, node.weight());
        assertEquals(3_000_000_000L, node.profile().bootNanos());
        assertEquals(2, node.profile().fifoChars());
    }

    @Test
    void aGroupInsideIsMergedKeyByKeyUnlessItNamesALikeOfItsOwn() {
        String kinds = """
                kinds:
                  nodes:
                    gauge: {segment: left, profile: {like: 8-bit loop, boot: 3 s, loop-pass: 5 ms}}
                """;
        Profile merged = node("a: {like: gauge, address: 1, profile: {boot: 4 s}}", kinds)
                .profile();
        Profile other =
                node("a: {like: gauge, address: 1, profile: 32-bit}", kinds).profile();

        assertEquals(4_000_000_000L, merged.bootNanos());
        assertEquals(5_000_000, merged.loopPassNanos());
        assertEquals(500_000_000, other.bootNanos());
        assertEquals(200_000, other.loopPassNanos());
    }

    @Test
    void whatAPresetBringsWithItIsToldWhereItIsUsed() {
        List<Problem> problems = PitText.problems(PitText.with(
                "card: {kind: gauge stepper, shows: heading, speed: 90 deg/s}",
                "card: {like: small gauge stepper, shows: heading}"));

        assertEquals(1, problems.size(), problems::toString);
        assertEquals("zeroing", problems.get(0).key());
        assertEquals("write zeroing: sensor beside its like", problems.get(0).fix());
        assertTrue(problems.get(0).where().endsWith(".yaml:17:7"), problems::toString);
    }

    @Test
    void aPanelsPartsComeFromItsKindAndThePartsFromTheirs() {
        String text = PitText.with("""
                  compass:
                    node: a
                    indicators:
                      card: {kind: gauge stepper, shows: heading, speed: 90 deg/s}
                    controls:
                      knob: {kind: encoder, number: 1}
                """, """
                  compass:
                    like: dial
                    node: a
                    indicators:
                      card: {speed: 80 deg/s}
                      lamp: {kind: lamp, shows: airspeed}
                    controls:
                      knob: {bounce: 1 ms}
                kinds:
                  panels:
                    dial:
                      place: left
                      indicators:
                        card: {like: needle, shows: heading}
                      controls:
                        knob: {like: knob, number: 7}
                  indicators:
                    needle: {kind: gauge stepper, speed: 70 deg/s, delay: 2 ms}
                  controls:
                    knob: {kind: encoder, debounce: 5 ms, bounce: 2 ms}
                """).replaceFirst("(?s)(kinds:.*?)(  speed:\n.*)", "$2$1");

        Panel panel = panel(text);

        Indicator card = panel.indicators().get(0);
        assertEquals("left", panel.place());
        assertEquals(
                List.of("card", "lamp"),
                panel.indicators().stream().map(Indicator::name).toList());
        assertEquals(80, card.motion().ratePerSecond());
        assertEquals(2_000_000, card.delayNanos());
        assertEquals(List.of(new Control("knob", Control.Kind.ENCODER, 7, 5_000_000, 1_000_000, 0)), panel.controls());
    }

    @Test
    void aListReplacesTheLikesList() {
        String text = PitText.with("shows: airspeed,", "like: both, shows: airspeed,") + """
                kinds:
                  indicators:
                    both: {shows: [heading, airspeed]}
                """;

        Pit pit = PitText.understood(text);

        assertEquals(
                List.of(1),
                pit.segments()
                        .get(0)
                        .nodes()
                        .get(1)
                        .panels()
                        .get(0)
                        .indicators()
                        .get(0)
                        .signals());
    }

    @Test
    void aNodesProfileThatIsLikeNothingElseIsLikeItsBoards() {
        String boards = """
                boards:
                  small board: {draws: 40 mA, uarts: 1, profile: {like: 8-bit loop, loop-pass: 7 ms}}
                """;

        Profile boards1 = node("a: {segment: left, address: 1, board: small board}", boards)
                .profile();
        Profile mixed = node("a: {segment: left, address: 1, board: small board, profile: {boot: 1 s}}", boards)
                .profile();
        Profile own = node("a: {segment: left, address: 1, board: small board, profile: 32-bit}", boards)
                .profile();

        assertEquals(7_000_000, boards1.loopPassNanos());
        assertEquals(7_000_000, mixed.loopPassNanos());
        assertEquals(1_000_000_000, mixed.bootNanos());
        assertEquals(200_000, own.loopPassNanos());
    }

    @Test
    void aTransceiversDriverCountsBeforeTheProfiles() {
        Profile profile = node("a: {segment: left, address: 1, profile: 8-bit loop, transceiver: {like: module}}", """
                transceivers:
                  module: {driver: automatic, enable-lead: 0 us, release-tail: 30 us, unit-load: 1/8}
                """)
                .profile();

        assertEquals(Transceiver.Driver.AUTOMATIC, profile.transceiver().driver());
        assertEquals(
                Transceiver.Receiver.OFF_WHILE_SENDING, profile.transceiver().receiver());
        assertEquals(0, profile.enableLeadNanos());
        assertEquals(30_000, profile.releaseTailNanos());
    }

    @Test
    void likesOfLikesLeadOnToThePresets() {
        Profile profile =
                node("a: {segment: left, address: 1, profile: third}", """
                profiles:
                  first: {like: 8-bit interrupt, boot: 1 s}
                  second: {like: first, fifo: 3}
                  third: second
                """).profile();

        assertEquals(Distribution.uniform(150_000, 250_000), profile.replyGap());
        assertEquals(1_000_000_000, profile.bootNanos());
        assertEquals(3, profile.fifoChars());
    }

    @Test
    void whatNobodyUsesIsStillCheckedButNeedNotBeWhole() {
        List<Problem> problems = PitText.problems(PitText.SMALL + """
                profiles:
                  unused: {bot: 1 s, ring: many, tasks: {lights: {every: 1 ms}}}
                kinds:
                  nodes:
                    unused: {weight: 2, profile: 8-bit lop}
                  indicators:
                    unused: {speed: fast}
                """);

        assertEquals(
                List.of("UNKNOWN_KEY", "WRONG_TYPE", "WRONG_TYPE"),
                problems.stream().map(Problem::code).toList());
    }

    @Test
    void aProblemOfAKindIsToldOnceHoweverManyUseIt() {
        String text = PitText.SMALL.replaceAll("profile: [0-9a-z -]+", "like: gauge") + """
                kinds:
                  nodes:
                    gauge: {wieght: 3, profile: {like: 8-bit lop, fifo: 0}}
                """;

        List<Problem> problems = PitText.problems(text);

        assertEquals(
                List.of("UNKNOWN_KEY 26", "UNKNOWN_NAME 26", "OUT_OF_RANGE 26"),
                problems.stream().map(p -> p.code() + " " + p.line()).toList());
    }

    @Test
    void whatAnUnknownKindWouldHaveGivenIsNotMissedToo() {
        String message = PitText.message(NODE_A, "a: {like: gage}");

        assertEquals("""
                pit.yaml:11:13: like: UNKNOWN_NAME
                  found:    gage
                  expected: the name of a kind of node; there is none yet
                  fix:      add a kind of node of this name, or correct the name
                """, message);
    }

    @Test
    void kindsThatAreLikeEachOtherAreToldWithTheirPlace() {
        List<Problem> rings = PitText.problems(PitText.SMALL + """
                kinds:
                  panels:
                    one: {like: two}
                    two: {like: one}
                """);

        assertEquals(
                List.of("pit.yaml:26:17 CIRCULAR", "pit.yaml:27:17 CIRCULAR"),
                rings.stream().map(p -> p.where() + " " + p.code()).toList());
    }

    private static Node node(String written, String more) {
        return PitText.understood(PitText.with(NODE_A, written) + more)
                .segments()
                .get(0)
                .nodes()
                .get(0);
    }

    private static Panel panel(String text) {
        return PitText.understood(text)
                .segments()
                .get(0)
                .nodes()
                .get(0)
                .panels()
                .get(0);
    }
}
