package dropline.harness.suite;

import dropline.bus.fault.Fault;
import dropline.bus.pit.Pit;
import dropline.harness.fault.FaultOptions;
import dropline.harness.fault.InTurn;
import dropline.harness.problem.Problem;
import dropline.harness.yaml.Place;
import dropline.harness.yaml.Tree;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;

/** A fault, and the text with which the suite states it. */
record StatedFault(Fault fault, Tree.Scalar text) {
    static final String KEY = "faults";
    static final String IN_TURN = "in-turn";

    /** What came of one fault's text: the fault, or what is wrong with it at its place. */
    record Read(List<StatedFault> faults, List<Problem> problems) {}

    /** @param lengthNanos how long the run will be, ns; empty where that is not known before it */
    static Read read(Tree.Scalar text, Pit pit, OptionalLong lengthNanos) {
        FaultOptions.Read read = FaultOptions.read(List.of(text.text()), pit, lengthNanos);
        return new Read(
                read.faults().stream()
                        .map(fault -> new StatedFault(fault, text))
                        .toList(),
                at(text.place(), read.problems()));
    }

    /** The same fault on everything of this pit that it can strike: {@code reset at 20s}, without a target. */
    static Read inTurn(Tree.Scalar text, Pit pit, OptionalLong lengthNanos) {
        List<StatedFault> faults = new ArrayList<>();
        for (String one : InTurn.texts(text.text(), pit)) {
            FaultOptions.Read read = FaultOptions.read(List.of(one), pit, lengthNanos);
            if (!read.problems().isEmpty()) {
                return new Read(List.of(), at(text.place(), read.problems()));
            }
            read.faults().forEach(fault -> faults.add(new StatedFault(fault, text)));
        }
        return new Read(faults, List.of());
    }

    /** That a run was over before it could strike; nothing if it was not. */
    List<Problem> neverStruck(Pit pit, long ranNanos) {
        return at(text.place(), FaultOptions.neverStruck(List.of(fault), pit, ranNanos));
    }

    private static List<Problem> at(Place place, List<Problem> problems) {
        return problems.stream()
                .map(problem -> new Problem(
                        place.file(),
                        place.line(),
                        place.column(),
                        problem.key().isEmpty() ? KEY : KEY + ", " + problem.key(),
                        problem.code(),
                        problem.found(),
                        problem.expected(),
                        problem.fix()))
                .toList();
    }
}
