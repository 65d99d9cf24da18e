package dropline.scenarios.pieces;

import org.openjdk.jmh.profile.GCProfiler;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.openjdk.jmh.runner.options.TimeValue;

/** Runs all benchmarks of pieces, each in a Java of its own, with what each allocates. */
public final class Pieces {
    private static final int FORKS = 1;
    private static final int WARM_UPS = 4;
    private static final int MEASURED = 5;

    private Pieces() {}

    /** @param home the project's root folder, where the scenarios are */
    public static void run(String home) throws RunnerException {
        new Runner(new OptionsBuilder()
                        .include("dropline\\.scenarios\\.pieces\\..*")
                        .forks(FORKS)
                        .warmupIterations(WARM_UPS)
                        .warmupTime(TimeValue.seconds(1))
                        .measurementIterations(MEASURED)
                        .measurementTime(TimeValue.seconds(1))
                        .jvmArgsAppend("@" + home + "/java.options", "-Xmx512m", "-Ddropline.home=" + home)
                        .addProfiler(GCProfiler.class)
                        .build())
                .run();
    }
}
