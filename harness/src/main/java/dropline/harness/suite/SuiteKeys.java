package dropline.harness.suite;

import dropline.harness.yaml.Form;
import java.util.List;
import java.util.Map;

/** The keys of suite files, declared once: what {@link SuiteReader} may ask for, and what a schema is made of. */
final class SuiteKeys {
    static final Map<String, Boolean> WORDS = Map.of("yes", true, "true", true, "no", false, "false", false);

    /** Yes or no; true and false too, which YAML takes for other than words. */
    static final Form YES_NO = new Form.Any(List.of(Form.choice("yes", "no"), new Form.Flag()));

    static final Form LENGTH = new Form.Any(
            List.of(new Form.Pattern("(?:[0-9]+(?:\\.[0-9]+)?\\s*(?:ns|us|ms|s|min|m|h)\\s*)+"), new Form.Whole(0, 0)));

    private static final Form SEED = new Form.Whole(-999_999_999_999_999_999L, 999_999_999_999_999_999L);

    /** What a run may have under {@code holds}. */
    static final Form.Keys HOLDS = Form.keys(
            "what must hold",
            Form.Entry.optional("budgets", YES_NO, "every panel and control keeps within its budget"),
            Form.Entry.optional("controls", YES_NO, "no move of a control is lost"),
            Form.Entry.optional("cycle", LENGTH, "no round of polls on any segment takes longer"),
            Form.Entry.optional("known", LENGTH, "controls are known so soon after the start and a board's restart"),
            Form.Entry.optional("recovery", LENGTH, "panels are right again so soon after the last fault"),
            Form.Entry.optional("silence", LENGTH, "panels show so soon what the host said last"));

    /** What a suite may have there. */
    static final Form.Keys SUITE_HOLDS = Form.more(
            HOLDS,
            "what must hold in every run that does not say otherwise, and of the pit",
            Form.Entry.optional("copper", YES_NO, "no rule of copper is broken or undecided"),
            Form.Entry.optional("supply", YES_NO, "no rule of supply is broken or undecided"));

    /** What a run may have. */
    static final Form.Keys RUN = Form.keys(
            "a run",
            Form.Entry.optional("recording", Form.text(), "the path of what is replayed"),
            Form.Entry.optional("for", LENGTH, "in place of a recording: how long the pit's own load is run"),
            Form.Entry.optional("from", LENGTH, "where in the recording it begins"),
            Form.Entry.optional("to", LENGTH, "where in the recording it ends"),
            Form.Entry.optional(
                    "seeds",
                    new Form.Any(List.of(SEED, new Form.Items(SEED, 1))),
                    "the run is repeated with each of them"),
            Form.Entry.optional(StatedFault.KEY, Form.texts(), "what goes wrong (dropline faults)"),
            Form.Entry.optional(StatedFault.IN_TURN, Form.text(), "a fault that is tried on everything it can strike"),
            Form.Entry.optional("holds", HOLDS, "what this run is held to"));

    /** What a live step may have. */
    static final Form.Keys STEP = Form.keys(
            "a step that needs hardware",
            Form.Entry.optional("roll-call", Form.text(), "a segment: who is there"),
            Form.Entry.optional("drive", Form.text(), "a segment: play a recording to its boards"),
            Form.Entry.optional("bench", Form.texts(), "boards to examine, or changed"),
            Form.Entry.optional("recording", Form.text(), "of drive: the path of what is played"),
            Form.Entry.optional("to", LENGTH, "of drive: where in the recording it ends"),
            Form.Entry.optional("port", Form.text(), "a serial port, such as COM7"),
            Form.Entry.optional("tcp", Form.text(), "in place of a port: HOST:PORT"));

    /** What a suite may have. */
    static final Form.Keys SUITE = Form.keys(
            "A suite of Dropline (docs/suite-file.md): which runs a pit must stand.",
            Form.Entry.required("suite", Form.text(), "the suite's name"),
            Form.Entry.required("pit", Form.text(), "the path of the pit file"),
            Form.Entry.optional("holds", SUITE_HOLDS, "what every run is held to, and the pit"),
            Form.Entry.optional(
                    "live", new Form.Named("steps that need hardware", STEP), "steps that need hardware, by name"),
            Form.Entry.optional("runs", new Form.Named("runs", RUN), "the runs, by name"));

    private SuiteKeys() {}
}
