package dropline.harness.json;

import dropline.bus.supply.State;
import dropline.harness.power.Flight;
import dropline.harness.power.PowerResult;
import dropline.harness.power.PowerUp;
import dropline.harness.power.Zone;
import java.io.IOException;
import java.io.Writer;
import tools.jackson.core.JsonGenerator;

/** Writes what the supplies of a pit come to as JSON: keys in a fixed order, volts, amperes, ohms and watts as such. */
public final class PowerJson {
    private PowerJson() {}

    /** Writes one document and a line feed, and flushes; does not close. */
    public static void write(PowerResult result, Writer writer) throws IOException {
        Document.write(writer, json -> document(json, result));
    }

    private static void document(JsonGenerator json, PowerResult result) {
        json.writeStartObject();
        json.writeNumberProperty("version", PowerResult.VERSION);
        json.writeStringProperty("pit", result.pit());
        json.writeStringProperty("outcome", result.passes() ? "pass" : "fail");
        json.writeArrayPropertyStart("points");
        result.points().forEach(point -> point(json, point));
        json.writeEndArray();
        json.writeArrayPropertyStart("boards");
        result.boards().forEach(board -> board(json, board));
        json.writeEndArray();
        json.writeNumberProperty("boardsOnNoSupply", result.unfed());
        json.writeArrayPropertyStart("rulings");
        result.rulings().forEach(ruling -> Parts.ruling(json, ruling));
        json.writeEndArray();
        json.writeObjectPropertyStart("currents");
        json.writeNumberProperty("stated", result.figures().stated());
        json.writeNumberProperty("guessed", result.figures().guessed());
        json.writeNumberProperty("unknown", result.figures().unknown());
        json.writeEndObject();
        json.writeArrayPropertyStart("zones");
        result.zones().forEach(zone -> zone(json, zone));
        json.writeEndArray();
        json.writeArrayPropertyStart("zoneTraffic");
        for (PowerResult.Traffic traffic : result.traffic()) {
            json.writeStartObject();
            json.writeStringProperty("segment", traffic.segment());
            json.writeNumberProperty("zones", traffic.zones());
            json.writeNumberProperty("levelsASecond", traffic.rate());
            json.writeNumberProperty("broadcastBytesASecond", traffic.broadcast());
            json.writeNumberProperty("oneByOneBytesASecond", traffic.oneByOne());
            json.writeEndObject();
        }
        json.writeEndArray();
        PowerUp start = result.powerUp();
        if (start != null) {
            powerUp(json, start);
        }
        flight(json, result);
        json.writeEndObject();
    }

    private static void point(JsonGenerator json, PowerResult.Point point) {
        json.writeStartObject();
        json.writeStringProperty("name", point.name());
        json.writeNumberProperty("depth", point.depth());
        if (point.isSupply()) {
            json.writeNumberProperty("volts", point.volts());
            Parts.number(json, "ratingAmps", point.ratingAmps() == 0 ? Double.NaN : point.ratingAmps());
        } else {
            json.writeStringProperty("wire", point.wire());
            json.writeNumberProperty("oneWayMetres", point.metres());
            json.writeNumberProperty("thereAndBackOhms", point.ohms());
        }
        json.writeNumberProperty("boards", point.boards());
        json.writeObjectPropertyStart("amps");
        for (State state : State.values()) {
            Parts.number(json, Parts.word(state), point.amps(state));
        }
        json.writeEndObject();
        json.writeEndObject();
    }

    private static void board(JsonGenerator json, PowerResult.Board board) {
        json.writeStartObject();
        json.writeStringProperty("name", board.name());
        json.writeStringProperty("supply", board.supply());
        json.writeStringProperty("fedBy", board.fedBy());
        json.writeNumberProperty("leastVolts", board.volts());
        json.writeStringProperty("when", Parts.word(board.when()));
        Parts.number(json, "worksDownTo", board.worksDownTo() == 0 ? Double.NaN : board.worksDownTo());
        Parts.number(json, "groundVolts", board.groundVolts());
        json.writeNumberProperty("regulatorWatts", board.regulatorWatts());
        json.writeBooleanProperty("backFed", board.backFed());
        json.writeEndObject();
    }

    private static void zone(JsonGenerator json, Zone zone) {
        json.writeStartObject();
        json.writeStringProperty("name", zone.name());
        json.writeStringProperty("segment", zone.segment());
        json.writeStringProperty("signal", zone.signal());
        Parts.number(json, "volts", zone.volts());
        Parts.number(json, "fullAmps", zone.amps());
        json.writeStringProperty("curve", zone.curve());
        json.writeNumberProperty("bits", zone.bits());
        json.writeNumberProperty("coarsestStep", zone.coarsest());
        json.writeEndObject();
    }

    private static void powerUp(JsonGenerator json, PowerUp start) {
        json.writeObjectPropertyStart("powerUp");
        json.writeNumberProperty("readyNanos", start.readyNanos());
        json.writeNumberProperty("zoneLagNanos", start.zoneLagNanos());
        json.writeArrayPropertyStart("steps");
        for (PowerUp.Step step : start.steps()) {
            json.writeStartObject();
            json.writeNumberProperty("atNanos", step.atNanos());
            json.writeStringProperty("what", step.what());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeArrayPropertyStart("peaks");
        for (PowerUp.Peak peak : start.peaks()) {
            json.writeStartObject();
            json.writeStringProperty("supply", peak.supply());
            Parts.number(json, "amps", peak.amps());
            json.writeNumberProperty("atNanos", peak.atNanos());
            json.writeStringProperty("why", peak.why());
            Parts.number(json, "firstStateAmps", peak.firstStateAmps());
            json.writeNumberProperty("firstStateNanos", peak.firstStateNanos());
            json.writeEndObject();
        }
        json.writeEndArray();
        PowerUp.Staggered turn = start.staggered();
        if (turn != null) {
            json.writeObjectPropertyStart("delayedByAddress");
            json.writeNumberProperty("delayNanos", turn.delayNanos());
            json.writeNumberProperty("readyNanos", turn.readyNanos());
            json.writeArrayPropertyStart("peakAmps");
            turn.amps().forEach(json::writeNumber);
            json.writeEndArray();
            json.writeEndObject();
        }
        json.writeEndObject();
    }

    private static void flight(JsonGenerator json, PowerResult result) {
        Flight flight = result.flight();
        if (flight == null) {
            return;
        }
        json.writeObjectPropertyStart("flight");
        json.writeStringProperty("recording", flight.recording());
        json.writeNumberProperty("durationNanos", flight.durationNanos());
        Parts.strings(json, "losses", flight.losses());
        json.writeArrayPropertyStart("points");
        for (PowerResult.Point point : result.points()) {
            Flight.Drawn drawn = flight.points().get(point.number());
            json.writeStartObject();
            json.writeStringProperty("name", point.name());
            Parts.number(json, "meanAmps", drawn.mean());
            Parts.number(json, "p99Amps", drawn.p99());
            Parts.number(json, "maxAmps", drawn.max());
            json.writeNumberProperty("maxAtNanos", drawn.maxNanos());
            json.writeArrayPropertyStart("overTime");
            for (Flight.Stretch stretch : drawn.curve()) {
                json.writeStartObject();
                json.writeNumberProperty("fromNanos", stretch.fromNanos());
                Parts.number(json, "meanAmps", stretch.mean());
                Parts.number(json, "maxAmps", stretch.max());
                json.writeEndObject();
            }
            json.writeEndArray();
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeArrayPropertyStart("boards");
        for (PowerResult.Board board : result.boards()) {
            Flight.Least least = flight.boards().get(board.node());
            json.writeStartObject();
            json.writeStringProperty("name", board.name());
            json.writeNumberProperty("leastVolts", least.volts());
            json.writeNumberProperty("atNanos", least.atNanos());
            Parts.number(json, "groundVolts", least.groundVolts());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeEndObject();
    }
}
