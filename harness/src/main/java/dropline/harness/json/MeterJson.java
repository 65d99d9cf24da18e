package dropline.harness.json;

import dropline.bus.copper.Range;
import dropline.harness.meter.MeterResult;
import dropline.harness.meter.SupplyReading;
import java.io.IOException;
import java.io.Writer;
import tools.jackson.core.JsonGenerator;

/** Writes what a meter should read, and what was read says, as JSON; described in {@code docs/meter.md}. */
public final class MeterJson {
    private static final int VERSION = 1;

    private MeterJson() {}

    /** Writes one document and a line feed, and flushes; does not close. */
    public static void write(MeterResult result, Writer writer) throws IOException {
        Document.write(writer, json -> document(json, result));
    }

    private static void document(JsonGenerator json, MeterResult result) {
        json.writeStartObject();
        json.writeNumberProperty("version", VERSION);
        json.writeStringProperty("pit", result.pit());
        json.writeArrayPropertyStart("pairs");
        result.pairs().forEach(pair -> pair(json, pair));
        json.writeEndArray();
        json.writeArrayPropertyStart("supplies");
        result.supplies().forEach(supply -> supply(json, supply));
        json.writeEndArray();
        MeterResult.Diagnosis diagnosis = result.diagnosis();
        if (diagnosis == null) {
            json.writeNullProperty("diagnosis");
        } else {
            json.writeName("diagnosis");
            diagnosis(json, diagnosis);
        }
        json.writeEndObject();
    }

    private static void pair(JsonGenerator json, MeterResult.Readings pair) {
        json.writeStartObject();
        json.writeStringProperty("pair", pair.pair());
        json.writeStringProperty("at", pair.at());
        json.writeArrayPropertyStart("readings");
        for (MeterResult.Expected expected : pair.expected()) {
            json.writeStartObject();
            json.writeStringProperty("reading", expected.reading().word());
            json.writeStringProperty("unit", Parts.word(expected.reading().unit()));
            range(json, "sound", expected.sound());
            json.writeArrayPropertyStart("faults");
            for (MeterResult.Wrong wrong : expected.faults()) {
                json.writeStartObject();
                json.writeStringProperty("fault", wrong.fault());
                range(json, "range", wrong.range());
                json.writeBooleanProperty("shows", wrong.shows());
                json.writeEndObject();
            }
            json.writeEndArray();
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private static void supply(JsonGenerator json, SupplyReading supply) {
        json.writeStartObject();
        json.writeStringProperty("segment", supply.segment());
        json.writeStringProperty("board", supply.board());
        json.writeNumberProperty("supplyVolts", supply.supplyVolts());
        json.writeNumberProperty("volts", supply.volts());
        json.writeArrayPropertyStart("faults");
        for (SupplyReading.Wrong wrong : supply.faults()) {
            json.writeStartObject();
            json.writeStringProperty("fault", wrong.fault());
            json.writeNumberProperty("volts", wrong.volts());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private static void diagnosis(JsonGenerator json, MeterResult.Diagnosis diagnosis) {
        json.writeStartObject();
        json.writeStringProperty("pair", diagnosis.pair());
        json.writeArrayPropertyStart("taken");
        for (MeterResult.Taken taken : diagnosis.taken()) {
            json.writeStartObject();
            json.writeStringProperty("reading", taken.reading().word());
            json.writeStringProperty("at", taken.at());
            json.writeNumberProperty("value", taken.value());
            json.writeEndObject();
        }
        json.writeEndArray();
        Parts.strings(json, "fits", diagnosis.fits());
        json.writeBooleanProperty("isSound", diagnosis.isSound());
        json.writeStringProperty("nearest", diagnosis.nearest());
        json.writeArrayPropertyStart("further");
        for (MeterResult.Further further : diagnosis.further()) {
            json.writeStartObject();
            json.writeStringProperty("reading", further.reading().word());
            json.writeStringProperty("at", further.at());
            json.writeArrayPropertyStart("ranges");
            further.ranges().forEach(range -> bounds(json, range));
            json.writeEndArray();
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private static void range(JsonGenerator json, String key, Range range) {
        json.writeName(key);
        bounds(json, range);
    }

    private static void bounds(JsonGenerator json, Range range) {
        json.writeStartArray();
        json.writeNumber(range.low());
        json.writeNumber(range.high());
        json.writeEndArray();
    }
}
