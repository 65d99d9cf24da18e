package dropline.bus.pit;

/**
 * What a segment's cable is made of, as far as anybody said. Lengths are in metres along the cable, NaN where unknown.
 *
 * @param ohmsPerMetre resistance of one of its conductors; NaN where nobody said how thick they are
 * @param impedanceOhms characteristic impedance of the pair, ohm, above 0
 * @param stepMetres from one stop to the next, where a node does not say otherwise
 * @param stubMetres from the cable to a board, where a node does not say otherwise
 * @param common whether a third wire joins the grounds of all boards
 */
public record Wire(double ohmsPerMetre, double impedanceOhms, double stepMetres, double stubMetres, Common common) {
    /** Nothing said, on common twisted pair of 120 ohm. */
    public static final Wire UNKNOWN = new Wire(Double.NaN, 120, Double.NaN, Double.NaN, Common.UNSTATED);

    /** Whether there is a third wire. */
    public enum Common {
        YES,
        NO,
        UNSTATED
    }

    public Wire {
        if (!(impedanceOhms > 0) || ohmsPerMetre < 0 || stepMetres < 0 || stubMetres < 0) {
            throw new IllegalArgumentException("an impedance must be above 0, lengths not below: impedance="
                    + impedanceOhms + " ohmsPerMetre=" + ohmsPerMetre + " step=" + stepMetres + " stub=" + stubMetres);
        }
    }
}
