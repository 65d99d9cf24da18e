package dropline.harness.cli;

import dropline.harness.pitfile.PitFile;
import picocli.CommandLine.Option;

/** A board for which there is no pit file yet: what must be known of it to speak to it. */
final class OneBoard extends SpokenByOptions {
    @Option(names = "--address", required = true, paramLabel = "N", description = "The board's address.")
    private int address;

    /** A pit that has nothing but this board, with one value and no neighbours. */
    PitFile.Understood described() {
        return described(address);
    }
}
