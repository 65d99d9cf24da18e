package dropline.bus.copper;

import dropline.bus.rule.Rule;
import dropline.bus.rule.Unit;

/** What a pair has to keep to. */
public enum CopperRule implements Rule {
    ADDRESSES("addresses in use", Unit.NUMBER, Sense.AT_MOST, Weight.LAW, "MODBUS over serial line V1.02, 2.2"),
    UNIT_LOADS("unit loads", Unit.UNIT_LOADS, Sense.AT_MOST, Weight.LAW, "TI SLLA272D, bus loading"),
    /** By {@link BiasCount#TWENTY_UNIT_LOADS}. */
    UNIT_LOADS_WITH_BIAS(
            "unit loads, bias counted", Unit.UNIT_LOADS, Sense.AT_MOST, Weight.LAW, "TI SLLA272D, bus loading"),
    REST_VOLTS(
            "D1 above D0 at rest",
            Unit.VOLTS,
            Sense.AT_LEAST,
            Weight.LAW,
            "threshold of 200 mV: TIA-485 as given by EURASIP 10.1186/s13639-016-0042-x, table 1"),
    DRIVEN_VOLTS(
            "weakest driven level",
            Unit.VOLTS,
            Sense.AT_LEAST,
            Weight.LAW,
            "1.5 V across 54 ohm: TI SLLA628; threshold of 200 mV: TIA-485 as given by EURASIP"
                    + " 10.1186/s13639-016-0042-x, table 1"),
    TERMINATORS("terminators", Unit.NUMBER, Sense.AT_MOST, Weight.LAW, "MODBUS over serial line V1.02, 3.4.5"),
    ENDS_TERMINATED(
            "ends with a terminator",
            Unit.NUMBER,
            Sense.AT_LEAST,
            Weight.GUIDANCE,
            "MODBUS over serial line V1.02, 3.4.5"),
    TERMINATORS_ELSEWHERE(
            "terminators not at an end",
            Unit.NUMBER,
            Sense.AT_MOST,
            Weight.LAW,
            "MODBUS over serial line V1.02, 3.4.5"),
    TERMINATOR_MISMATCH(
            "reflected by a terminator",
            Unit.SHARE,
            Sense.AT_MOST,
            Weight.GUIDANCE,
            "a fifth: what MODBUS over serial line V1.02, 3.4.5, puts up with, from memory: 150 ohm on 100 ohm cable"),
    BIAS_PLACES(
            "places with bias", Unit.NUMBER, Sense.AT_MOST, Weight.GUIDANCE, "MODBUS over serial line V1.02, 3.4.6"),
    BRANCH(
            "longest stub or branch",
            Unit.METRES,
            Sense.AT_MOST,
            Weight.GUIDANCE,
            "TI SN65HVD10/11/12 data sheet, table 10-1"),
    LINE(
            "length end to end",
            Unit.METRES,
            Sense.AT_MOST,
            Weight.GUIDANCE,
            "metres x bits a second up to 10^8, at most 1200 m: embedcalc RS-485 tool; for 24 AWG, as"
                    + " TIA/EIA-422-B, A.1.1"),
    EDGE(
            "slowest edge",
            Unit.SECONDS,
            Sense.AT_MOST,
            Weight.LAW,
            "3/10 of a bit: TIA-485 as given by EURASIP 10.1186/s13639-016-0042-x, table 1"),
    GROUND_DIFFERENCE(
            "grounds apart",
            Unit.VOLTS,
            Sense.AT_MOST,
            Weight.LAW,
            "-7 to +12 V at every receiver: TIA-485 as given by TI SLLA628"),
    COMMON_WIRE(
            "third wire, common",
            Unit.NUMBER,
            Sense.AT_LEAST,
            Weight.LAW,
            "MODBUS over serial line V1.02, 3.3.2, 3.4.4");

    /** What a receiver may fail to tell apart, V. */
    static final double THRESHOLD_VOLTS = 0.2;

    static final int MOST_ADDRESSES = 247;

    /** Two near ends of a line. */
    static final int ENDS = 2;

    static final double MOST_REFLECTED = 0.2;

    /**
     * What of a bit a driver's edge may last. TI SLLA628 says "no more than a third" in its prose, the standard's table
     * 0.30: the stricter counts.
     */
    static final double EDGE_SHARE_OF_A_BIT = 0.3;

    /**
     * What lies between -7 and +12 V seen from any board if drivers keep their wires between 0 and 5 V of their own
     * ground.
     */
    static final double MOST_GROUND_DIFFERENCE_VOLTS = 7;

    private final String title;
    private final Unit unit;
    private final Sense sense;
    private final Weight weight;
    private final String source;

    CopperRule(String title, Unit unit, Sense sense, Weight weight, String source) {
        this.title = title;
        this.unit = unit;
        this.sense = sense;
        this.weight = weight;
        this.source = source;
    }

    @Override
    public String title() {
        return title;
    }

    @Override
    public Unit unit() {
        return unit;
    }

    @Override
    public Sense sense() {
        return sense;
    }

    @Override
    public Weight weight() {
        return weight;
    }

    @Override
    public String source() {
        return source;
    }
}
