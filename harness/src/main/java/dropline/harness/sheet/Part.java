package dropline.harness.sheet;

/**
 * One indicator or control as a cell names it.
 *
 * @param name what it is called: for an indicator the value it shows, for a control its own name; may be empty
 * @param kind the word for its kind in the cell, in the pit file's spelling; empty where the cell does not say
 */
public record Part(String name, String kind) {}
