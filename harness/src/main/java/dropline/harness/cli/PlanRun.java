package dropline.harness.cli;

import dropline.bus.pit.Pit;
import dropline.harness.origin.Trials;
import dropline.harness.pitfile.PitEdits;
import dropline.harness.pitfile.PitFile;
import dropline.harness.plan.PlanAsked;
import dropline.harness.plan.PlanFile;
import dropline.harness.plan.Planned;
import dropline.harness.plan.Planning;
import dropline.harness.problem.Problems;
import dropline.harness.replay.StoppedRunException;
import dropline.harness.size.Judging;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;

/** Plans, and writes the plan as a pit file that is read and played again before it is saved. */
final class PlanRun {
    private final PlanAsked asked;
    private final PitFile.Understood understood;

    PlanRun(PlanAsked asked, PitFile.Understood understood) {
        this.asked = asked;
        this.understood = understood;
    }

    Planned planned(Trials.Stretch played) throws IOException {
        try (Judging judging = new Judging(Session.threads())) {
            return new Planning(asked, played, understood.figures(), judging, Session.threads()).run();
        } catch (StoppedRunException stopped) {
            throw new WrongInput("dropline: " + stopped.getMessage(), stopped);
        }
    }

    /** Saves a plan, if there is one. */
    void write(Planned planned, Played played, Path file, Trials.Stretch stretch) throws IOException {
        if (planned.pit() == null) {
            return;
        }
        String present = played.pit().toString();
        mustLieBeside(played.pit(), file);
        String text;
        try {
            text = PlanFile.of(
                    planned, understood.pit(), present, first(understood.tree().texts()));
        } catch (PitEdits.NotEditable cannot) {
            throw new WrongInput(
                    "dropline: the plan cannot be written: " + cannot.getMessage()
                            + ". Nothing was written; change the file by hand as the plan says.",
                    cannot);
        }
        mustBeThePlan(planned, PitFile.parse(file.toString(), text), stretch);
        OutputFiles.write(file, text);
    }

    private static String first(Map<String, String> texts) {
        return texts.values().iterator().next();
    }

    /** What a pit file includes, and its layouts and passports, count from the folder it lies in. */
    private void mustLieBeside(Path pit, Path file) {
        boolean refers = understood.tree().texts().size() > 1
                || understood.tree().paths().stream()
                        .anyMatch(path -> path.endsWith(".layout") || path.endsWith(".passport"));
        Path folder = pit.toAbsolutePath().normalize().getParent();
        if (refers && !file.toAbsolutePath().normalize().startsWith(folder)) {
            throw new WrongInput("dropline: " + pit + " names other files by where they lie beside it; write the plan"
                    + " into the same folder");
        }
    }

    private void mustBeThePlan(Planned planned, PitFile.Result read, Trials.Stretch stretch) throws IOException {
        if (read instanceof PitFile.Wrong wrong) {
            throw new IllegalStateException(
                    "a plan's file must be one that is understood:\n" + Problems.text(wrong.problems()));
        }
        Pit again = ((PitFile.Understood) read).pit();
        String digest = Planning.digest(understood.pit(), again, stretch, asked.seed(), Session.threads());
        if (!digest.equals(planned.result().digest())) {
            throw new IllegalStateException("a plan's file must play as the plan does: file=" + digest + " plan="
                    + planned.result().digest());
        }
    }
}
