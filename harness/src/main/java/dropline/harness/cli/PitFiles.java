package dropline.harness.cli;

import dropline.harness.pitfile.PitFile;
import dropline.harness.problem.Problem;
import dropline.harness.problem.Problems;
import java.nio.file.Path;
import java.util.List;

/** Reads a pit, or says all that is wrong with its file. */
final class PitFiles {
    private PitFiles() {}

    static PitFile.Understood read(Path file) {
        return read(file, "pit file");
    }

    /** @param what else the file could have been, in words: {@code pit file or recording} */
    static PitFile.Understood read(Path file, String what) {
        InputFiles.mustExist(file, what);
        PitFile.Result result = PitFile.read(file);
        if (result instanceof PitFile.Understood understood) {
            return understood;
        }
        if (result instanceof PitFile.Wrong wrong) {
            throw wrong(wrong.problems());
        }
        throw new AssertionError(result);
    }

    /** All of a file's problems as one message. */
    static WrongInput wrong(List<Problem> problems) {
        String count = problems.size() == 1 ? "1 problem" : problems.size() + " problems";
        return new WrongInput(Problems.text(problems) + "\ndropline: " + count + "; nothing was run");
    }
}
