package dropline.harness.json;

import dropline.bus.rule.Ruling;
import dropline.harness.finding.Cause;
import dropline.harness.finding.Finding;
import dropline.harness.verdict.AtWorst;
import dropline.harness.verdict.InjectedFault;
import dropline.harness.verdict.Latency;
import dropline.harness.verdict.Stages;
import dropline.harness.verdict.Verdict;
import java.util.List;
import java.util.Locale;
import tools.jackson.core.JsonGenerator;

/** What appears in several places of the document. */
final class Parts {
    private Parts() {}

    static String word(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    static void strings(JsonGenerator json, String key, List<String> strings) {
        json.writeArrayPropertyStart(key);
        strings.forEach(json::writeString);
        json.writeEndArray();
    }

    /** A ruling; what is not known of it is null. */
    static void ruling(JsonGenerator json, Ruling ruling) {
        json.writeStartObject();
        json.writeStringProperty(
                "rule", ruling.rule().name().toLowerCase(Locale.ROOT).replace('_', ' '));
        json.writeStringProperty("title", ruling.rule().title());
        json.writeStringProperty("where", ruling.where());
        json.writeStringProperty("standing", word(ruling.standing()));
        json.writeStringProperty("weight", word(ruling.rule().weight()));
        json.writeStringProperty("unit", word(ruling.rule().unit()));
        json.writeStringProperty("sense", word(ruling.rule().sense()));
        number(json, "value", ruling.value());
        number(json, "limit", ruling.limit());
        number(json, "margin", ruling.margin());
        json.writeStringProperty("basis", ruling.basis());
        json.writeStringProperty("source", ruling.rule().source());
        json.writeEndObject();
    }

    /** A number, or null where it is none. */
    static void number(JsonGenerator json, String key, double value) {
        if (Double.isNaN(value)) {
            json.writeNullProperty(key);
        } else {
            json.writeNumberProperty(key, value);
        }
    }

    static void atWorst(JsonGenerator json, String key, AtWorst atWorst) {
        json.writeObjectPropertyStart(key);
        if (atWorst.isFinite()) {
            json.writeNumberProperty("boundNanos", atWorst.nanos());
        } else {
            json.writeNullProperty("boundNanos");
        }
        json.writeArrayPropertyStart("parts");
        for (AtWorst.Part part : atWorst.parts()) {
            json.writeStartObject();
            json.writeStringProperty("stage", part.stage());
            json.writeNumberProperty("longestNanos", part.nanos());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeStringProperty("why", atWorst.why());
        json.writeEndObject();
    }

    static void faults(JsonGenerator json, String key, List<InjectedFault> faults) {
        json.writeArrayPropertyStart(key);
        faults.forEach(fault -> fault(json, fault));
        json.writeEndArray();
    }

    static void fault(JsonGenerator json, InjectedFault fault) {
        json.writeStartObject();
        json.writeStringProperty("fault", fault.fault());
        json.writeStringProperty("kind", fault.kind());
        json.writeStringProperty("segment", fault.segment());
        json.writeStringProperty("node", fault.node());
        json.writeStringProperty("part", fault.part());
        json.writeStringProperty("other", fault.other());
        json.writeNumberProperty("fromNanos", fault.fromNanos());
        json.writeNumberProperty("untilNanos", fault.untilNanos());
        json.writeStringProperty("rateMeaning", fault.rateMeaning());
        json.writeNumberProperty("rate", fault.rate());
        json.writeStringProperty("amountUnit", fault.amountUnit());
        json.writeNumberProperty("amount", fault.amount());
        json.writeEndObject();
    }

    static void findings(JsonGenerator json, String key, List<Finding> findings) {
        json.writeArrayPropertyStart(key);
        findings.forEach(finding -> finding(json, finding));
        json.writeEndArray();
    }

    private static void finding(JsonGenerator json, Finding finding) {
        json.writeStartObject();
        strings(json, "causes", finding.causes().stream().map(Cause::word).toList());
        json.writeStringProperty("about", word(finding.subject()));
        json.writeStringProperty("name", finding.name());
        json.writeStringProperty("segment", finding.segment());
        json.writeStringProperty("confidence", word(finding.confidence()));
        json.writeNumberProperty("count", finding.count());
        json.writeNumberProperty("firstNanos", finding.firstNanos());
        json.writeNumberProperty("lastNanos", finding.lastNanos());
        json.writeStringProperty("tiers", word(finding.tiers()));
        json.writeStringProperty("sentence", finding.sentence());
        json.writeStringProperty("next", finding.next());
        json.writeEndObject();
    }

    static void latency(JsonGenerator json, String key, Latency latency) {
        json.writeObjectPropertyStart(key);
        json.writeNumberProperty("count", latency.count());
        json.writeNumberProperty("meanNanos", latency.meanNanos());
        json.writeNumberProperty("p50Nanos", latency.p50Nanos());
        json.writeNumberProperty("p90Nanos", latency.p90Nanos());
        json.writeNumberProperty("p99Nanos", latency.p99Nanos());
        json.writeNumberProperty("maxNanos", latency.maxNanos());
        json.writeEndObject();
    }

    static void stages(JsonGenerator json, String key, Stages stages) {
        json.writeObjectPropertyStart(key);
        json.writeNumberProperty("hostNanos", stages.hostNanos());
        json.writeNumberProperty("adapterNanos", stages.adapterNanos());
        json.writeNumberProperty("queueNanos", stages.queueNanos());
        json.writeNumberProperty("wireNanos", stages.wireNanos());
        json.writeNumberProperty("nodeWaitNanos", stages.nodeWaitNanos());
        json.writeNumberProperty("deviceNanos", stages.deviceNanos());
        json.writeEndObject();
    }

    static void verdict(JsonGenerator json, String key, Verdict verdict) {
        json.writeObjectPropertyStart(key);
        json.writeStringProperty("outcome", word(verdict.outcome()));
        json.writeStringProperty("rule", verdict.rule());
        json.writeNumberProperty("valueNanos", verdict.valueNanos());
        json.writeNumberProperty("limitNanos", verdict.limitNanos());
        json.writeNumberProperty("marginNanos", verdict.marginNanos());
        json.writeStringProperty("uncertainty", verdict.uncertainty());
        json.writeStringProperty("evidence", verdict.evidence());
        json.writeEndObject();
    }
}
