package dropline.harness.report;

/** Plain text wrapped at spaces. */
public final class Paragraphs {
    private static final int WIDTH = 96;

    private final StringBuilder text;

    /** Appends to {@code text}. */
    public Paragraphs(StringBuilder text) {
        this.text = text;
    }

    /** Wraps at spaces; further lines are indented as deep as the first one's mark is long. */
    public void add(String mark, String words) {
        String indent = " ".repeat(mark.length());
        StringBuilder line = new StringBuilder(mark);
        boolean first = true;
        for (String word : words.split(" ", -1)) {
            if (!first && line.length() + 1 + word.length() > WIDTH) {
                text.append(line.toString().stripTrailing()).append('\n');
                line = new StringBuilder(indent);
                first = true;
            }
            line.append(first ? "" : " ").append(word);
            first = false;
        }
        text.append(line.toString().stripTrailing()).append('\n');
    }
}
