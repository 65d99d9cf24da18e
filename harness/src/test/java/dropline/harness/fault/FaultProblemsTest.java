package dropline.harness.fault;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.fault.Fault;
import dropline.bus.fault.FaultKind;
import dropline.bus.fault.FaultKind.Strikes;
import dropline.bus.fault.FaultKind.Timing;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.harness.problem.Problem;
import java.util.List;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** What cannot be injected, and what is said of it. */
final class FaultProblemsTest {
    private static final long SECOND = 1_000_000_000L;

    private static final Pit PIT = DemoPit.read();

    private final Pit pit = PIT;
    private final Layout layout = Layout.of(pit);
    private final FaultText texts = new FaultText(pit, layout);

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "dead-node oil-board at -5s | OUT_OF_RANGE",
                "dead-node oil-board at 600s | AFTER_END",
                "dead-node oil-board at 60 | MISSING_UNIT",
                "dead-node oil-board at 60 psi | WRONG_UNIT",
                "dead-node oil-board for 0s | OUT_OF_RANGE",
                "dead-node oil-board for ages | WRONG_TYPE",
                "dead-node oil-board by 3ms | UNUSED_KEY",
                "dead-node oil-board as clock-board | UNUSED_KEY",
                "silent-host front | UNUSED_KEY",
                "reset oil-board for 5s | UNUSED_KEY",
                "noise-burst front rate 0/s | OUT_OF_RANGE",
                "noise-burst front rate 1001/s | OUT_OF_RANGE",
                "noise-burst front rate 20% | WRONG_UNIT",
                "noise-burst front rate 2 | MISSING_UNIT",
                "noise-burst front rate often | WRONG_TYPE",
                "lost-state-frame front rate 101% | OUT_OF_RANGE",
                "lost-state-frame front rate 0% | OUT_OF_RANGE",
                "lost-state-frame front rate -1% | OUT_OF_RANGE",
                "lost-state-frame front rate 2/s | WRONG_UNIT",
                "noise-burst front by 0ms | OUT_OF_RANGE",
                "noise-burst front by -1ms | OUT_OF_RANGE",
                "noise-burst front by 2h | OUT_OF_RANGE",
                "noise-burst front by much | WRONG_TYPE",
                "slow-adapter overhead by 256 ms | OUT_OF_RANGE",
                "wrong-baud clock-board by 500 kbaud | OUT_OF_RANGE",
                "wrong-baud clock-board by 299 baud | OUT_OF_RANGE",
                "wrong-baud clock-board by 9600 | MISSING_UNIT",
                "clock-off clock-board by 0 ppm | OUT_OF_RANGE",
                "clock-off clock-board by 60% | OUT_OF_RANGE",
                "ring-overrun clock-board by 1.5 | OUT_OF_RANGE",
                "needle-slipped Airspeed by 0.1 kt | OUT_OF_RANGE",
                "needle-slipped Airspeed by 101% | OUT_OF_RANGE",
                "needle-slipped Airspeed by 12 deg | WRONG_UNIT",
                "sticking-needle Airspeed by -2 kt | OUT_OF_RANGE",
                "needle-slipped Clock/time | WRONG_TARGET",
                "needle-slipped Clock | WRONG_TARGET",
                "needle-slipped clock-board | WRONG_TARGET",
                "noise-burst clock-board | WRONG_TARGET",
                "noisy-axis heading-bug | WRONG_TARGET",
                "encoder-skips power-lever-1 | WRONG_TARGET",
                "switch-flickers power-lever-1 | WRONG_TARGET",
                "dead-node Airspeed | WRONG_TARGET",
                "duplicate-address oil-board as oil-board | WRONG_TARGET",
                "duplicate-address oil-board as clock-board | WRONG_TARGET",
                "duplicate-address oil-board as fool-board | UNKNOWN_NAME",
                "dead-node oil board | UNQUOTED_NAME",
                "dead-node at | MISSING_TARGET, MISSING_VALUE"
            })
    void whatIsImpossibleIsAProblem(String text, String codes) {
        FaultOptions.Read read = read(text);

        assertEquals(
                List.of(codes.split(", ")),
                read.problems().stream().map(Problem::code).toList(),
                () -> text + "\n" + read.problems());
        assertEquals(List.of(), read.faults());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "dead-nod oil-board | write dead-node; dropline faults lists them all",
                "dead-node oil-bord | write dead-node oil-board",
                "needle-slipped 'Vertikal speed' | write needle-slipped 'Vertical speed'",
                "duplicate-address oil-board as feul-board | write as fuel-board",
                "reset oil-board for 5s | write by 5s for how long it lasts, or add a rate such as rate 2/s"
            })
    void theFixNamesWhatWasProbablyMeant(String text, String fix) {
        assertEquals(fix, read(text).problems().get(0).fix());
    }

    @Test
    void allProblemsOfAllFaultsAreToldAtOnce() {
        FaultOptions.Read read = FaultOptions.read(
                List.of("dead-nod x", "dead-node oil-board", "noise-burst fron at 900s rate -2/s by 3 kbaud"),
                pit,
                OptionalLong.of(600 * SECOND));

        assertEquals(
                List.of("UNKNOWN_FAULT", "UNKNOWN_NAME", "AFTER_END", "OUT_OF_RANGE"),
                read.problems().stream().map(Problem::code).toList());
        assertEquals(1, read.faults().size());
    }

    @Test
    void aBeginIsNotHeldAgainstALengthNobodyKnows() {
        assertEquals(
                List.of(),
                FaultOptions.read(List.of("dead-node oil-board at 900s"), pit, OptionalLong.empty())
                        .problems());
    }

    @Test
    void afterTheRunAFaultThatNeverStruckIsAProblem() {
        List<Fault> faults = List.of(one("dead-node oil-board at 59s"), one("dead-node clock-board at 61s"));

        List<Problem> never = FaultOptions.neverStruck(faults, pit, 60 * SECOND);

        assertEquals(1, never.size());
        assertTrue(never.get(0).text().contains("clock-board"), never::toString);
        assertTrue(never.get(0).text().contains("never struck"), never::toString);
    }

    @ParameterizedTest
    @EnumSource(FaultKind.class)
    void aPartAKindDoesNotHaveIsRefused(FaultKind kind) {
        Fault fault =
                new SingleFaults(pit, layout).all(List.of(kind), 0, SECOND).get(0);
        String what = texts.what(fault);

        assertEquals(kind.timing() == Timing.STEADY, refuses(what + " rate " + (chance(kind) ? "5%" : "2/s"), "rate"));
        assertEquals(kind.unit() == FaultKind.Unit.NONE, refuses(what + " by 3", "by"));
        assertEquals(
                kind.strikes() != Strikes.NODE_AND_OTHER,
                refuses((kind.strikes() == Strikes.NODE_AND_OTHER ? what : what + " as clock-board"), "as"));
    }

    private boolean refuses(String text, String key) {
        return read(text).problems().stream()
                .anyMatch(problem ->
                        problem.code().equals("UNUSED_KEY") && problem.key().equals(key));
    }

    private static boolean chance(FaultKind kind) {
        return kind.timing() == Timing.CHANCE;
    }

    private Fault one(String text) {
        FaultOptions.Read read = read(text);
        assertEquals(List.of(), read.problems(), text);
        return read.faults().get(0);
    }

    private FaultOptions.Read read(String text) {
        return FaultOptions.read(List.of(text), pit, OptionalLong.of(600 * SECOND));
    }
}
