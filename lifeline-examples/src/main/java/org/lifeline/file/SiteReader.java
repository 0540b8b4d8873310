package org.lifeline.file;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.lifeline.base.InputRule;
import org.lifeline.base.PlausibleRange;
import org.lifeline.base.unit.Dimension;
import org.lifeline.file.Fields.Range;
import org.lifeline.model.ClearanceRules;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.ModelFactors;
import org.lifeline.model.Obstruction;
import org.lifeline.model.incident.SecondFall;

/** Reads {@code service}, {@code clearance}, {@code modelFactors}, {@code secondFall} and {@code rescue}. */
final class SiteReader {
    private static final double ABSOLUTE_ZERO = -273.15;
    private static final double HOTTEST = 1000;

    private final Fields top;

    SiteReader(Fields top) {
        this.top = top;
    }

    static void temperatures(Fields top, LifelineDesign.Builder b) {
        Fields f = top.object("service");
        if (f == null) {
            return;
        }
        List<JsonNode> items = f.array("temperatures");
        for (int i = 0; i < items.size(); i++) {
            String at = f.path("temperatures") + "[" + i + "]";
            double t = f.quantity(items.get(i), at, Dimension.TEMPERATURE, Range.ANY);
            if (t <= ABSOLUTE_ZERO || t >= HOTTEST) {
                f.findings().bad(at, items.get(i), FileRule.TEMPERATURE_RANGE);
            } else if (!Double.isNaN(t)) {
                b.temperature(t);
            }
        }
        f.close();
    }

    void clearance(LifelineDesign.Builder b) {
        Fields f = top.object("clearance");
        if (f == null) {
            return;
        }
        double stretch = f.quantity("harnessStretch", Dimension.LENGTH, Range.NOT_NEGATIVE);
        double margin = f.quantity("margin", Dimension.LENGTH, Range.NOT_NEGATIVE);
        double floor = f.within(
                "workingFloor", f.quantity("workingFloor", Dimension.LENGTH, Range.ANY), PlausibleRange.COORDINATE);
        if (!Double.isNaN(floor)) {
            b.workingFloor(floor);
        }
        List<Obstruction> obstructions = new ArrayList<>();
        List<JsonNode> items = f.array("obstructions");
        for (int i = 0; i < items.size(); i++) {
            Fields o = Fields.of(items.get(i), f.path("obstructions") + "[" + i + "]", f.findings());
            if (o == null) {
                continue;
            }
            double from = o.requiredQuantity("from", Dimension.LENGTH, Range.ANY);
            double to = o.requiredQuantity("to", Dimension.LENGTH, Range.ANY);
            double elevation = o.requiredQuantity("elevation", Dimension.LENGTH, Range.ANY);
            double distance = o.quantity("distance", Dimension.LENGTH, Range.NOT_NEGATIVE);
            o.close();
            Obstruction built =
                    o.build(() -> new Obstruction(from, to, elevation, Double.isNaN(distance) ? 0 : distance));
            if (built != null) {
                obstructions.add(built);
            }
        }
        f.close();
        ClearanceRules read = f.build(() -> {
            ClearanceRules rules = ClearanceRules.commonPractice().withObstructions(obstructions);
            rules = Double.isNaN(stretch) ? rules : rules.withHarnessStretch(stretch);
            return Double.isNaN(margin) ? rules : rules.withMargin(margin);
        });
        if (read != null) {
            b.clearance(read);
        }
    }

    /** A further worker who may fall within the first second, and a rescuer. */
    void incidents(LifelineDesign.Builder b, Set<String> workers) {
        Fields f = top.object("secondFall");
        if (f != null) {
            String worker = f.requiredText("worker");
            if (worker != null && !workers.contains(worker)) {
                f.findings().bad(f.path("worker"), f.node("worker"), InputRule.WORKER_UNKNOWN);
            }
            List<Double> delays = delays(f);
            f.close();
            SecondFall second = worker == null
                    ? null
                    : f.build(() -> f.has("delays") ? new SecondFall(worker, delays) : SecondFall.of(worker));
            if (second != null) {
                b.secondFall(second);
            }
        }
        Fields r = top.object("rescue");
        if (r != null) {
            double mass = r.within(
                    "rescuerMass",
                    r.requiredQuantity("rescuerMass", Dimension.MASS, Range.POSITIVE),
                    PlausibleRange.WORKER_MASS);
            r.close();
            if (!Double.isNaN(mass)) {
                b.rescuerMass(mass);
            }
        }
    }

    private static List<Double> delays(Fields f) {
        List<Double> list = new ArrayList<>();
        List<JsonNode> items = f.array("delays");
        for (int i = 0; i < items.size(); i++) {
            double delay =
                    f.quantity(items.get(i), f.path("delays") + "[" + i + "]", Dimension.TIME, Range.NOT_NEGATIVE);
            if (!Double.isNaN(delay)) {
                list.add(delay);
            }
        }
        return list;
    }

    void modelFactors(LifelineDesign.Builder b) {
        Fields f = top.object("modelFactors");
        if (f == null) {
            return;
        }
        double force = f.number("force", Range.POSITIVE);
        double distance = f.number("distance", Range.POSITIVE);
        String reason = f.text("reason");
        f.close();
        ModelFactors factors = f.build(() -> new ModelFactors(
                Double.isNaN(force) ? 1 : force, Double.isNaN(distance) ? 1 : distance, reason == null ? "" : reason));
        if (factors != null) {
            b.modelFactors(factors);
        }
    }
}
