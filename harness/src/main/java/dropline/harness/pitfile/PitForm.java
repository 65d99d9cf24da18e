package dropline.harness.pitfile;

import dropline.harness.yaml.Form;
import java.util.ArrayList;
import java.util.List;

/**
 * The keys of pit files, and so of passports and of the parts that a pit file includes, for a schema. What a group may
 * take from elsewhere, by {@code like} or from another file, is not required in it.
 */
public final class PitForm {
    private static final String ABOUT = "(?:about\\s+)?";
    private static final String MEASURED = "(?:\\s*,\\s*measured\\s+\\d{4}-\\d{2}-\\d{2})?";
    private static final Form ORIGINS =
            new Form.Pattern("(?:about\\s.+|.+,\\s*measured\\s+\\d{4}-\\d{2}-\\d{2}|preset)");

    private PitForm() {}

    /** All of it. */
    public static Form.Keys of() {
        return keys(Schema.ROOT, "A pit file of Dropline (docs/pit-file.md), or a part of one.", false);
    }

    private static Form.Keys keys(Section section, String doc, boolean partial) {
        boolean inKinds = partial || section.name().equals(PanelKeys.KINDS.name());
        boolean complete =
                section.shelf() == null && !inKinds && !section.name().isEmpty();
        List<Form.Entry> entries = new ArrayList<>();
        for (Key<?> key : section.keys()) {
            boolean required = complete && key.need() == Key.Need.REQUIRED;
            String words = key.doc() + (key.standard() == null ? "" : " (" + key.standard() + " where left out)");
            entries.add(new Form.Entry(key.name(), form(key), required, words));
        }
        for (Section inner : section.sections()) {
            boolean required = complete && inner.need() == Key.Need.REQUIRED;
            entries.add(new Form.Entry(inner.name(), form(inner, inKinds), required, inner.doc()));
        }
        return new Form.Keys(doc, entries);
    }

    private static Form form(Section section, boolean partial) {
        Form.Keys keys = keys(section, section.doc(), partial);
        Key<?> shorthand = section.shorthand();
        Form one = shorthand == null ? keys : new Form.Any(List.of(form(shorthand), keys));
        return section.shape() == Section.Shape.NAMED ? new Form.Named(section.doc(), one) : one;
    }

    /** A figure may say where it comes from. */
    private static Form form(Key<?> key) {
        Form plain = key.type().form();
        if (!key.isFigure()) {
            return plain;
        }
        return plain instanceof Form.Pattern pattern
                ? new Form.Pattern("(?:" + ABOUT + "(?:" + pattern.pattern() + ")" + MEASURED + "|preset)")
                : new Form.Any(List.of(plain, ORIGINS));
    }
}
