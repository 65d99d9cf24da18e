package dropline.harness.yaml;

/**
 * Where something is written.
 *
 * @param file as problems name it
 * @param line counted from 1; 0 where the file as a whole is meant
 * @param column counted from 1; 0 where the line or the file as a whole is meant
 */
public record Place(String file, int line, int column) {

    /** A file as a whole. */
    public static Place whole(String file) {
        return new Place(file, 0, 0);
    }

    /** In words, for somebody who looks at {@code here}: {@code line 8}, or {@code line 8 of left.yaml}. */
    public String seenFrom(Place here) {
        return "line " + line + (file.equals(here.file) ? "" : " of " + file);
    }
}
