package dropline.harness.cli;

import dropline.bus.fault.Fault;
import dropline.bus.pit.Pit;
import dropline.harness.fault.FaultOptions;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import picocli.CommandLine.Option;

/** The option that lets something go wrong. */
final class Injected {
    @Option(
            names = "--fault",
            paramLabel = "FAULT",
            description =
                    "Let this go wrong: \"KIND TARGET [as NODE] [at T] [for T] [rate R] [by AMOUNT]\". May be given"
                            + " several times. Times count from where the run begins; what is left out is the usual."
                            + " 'dropline faults' shows every kind with an example.")
    private List<String> faults = new ArrayList<>();

    boolean isEmpty() {
        return faults.isEmpty();
    }

    /**
     * The faults asked for, or all that is wrong with them.
     *
     * @param longestNanos the run's length, if it is known
     */
    List<Fault> read(Pit pit, OptionalLong longestNanos) {
        FaultOptions.Read read = FaultOptions.read(faults, pit, longestNanos);
        if (!read.problems().isEmpty()) {
            throw PitFiles.wrong(read.problems());
        }
        return read.faults();
    }
}
