package org.lifeline.file.reproduce;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.lifeline.analysis.Method;
import org.lifeline.base.PlausibleRange;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.absorber.DeploymentForce;
import org.lifeline.model.absorber.LoadingCurve;

/**
 * Checks the numbers of a result file by laws that need no solver: the forces on the supports carry the loads and the
 * cable, the energy of the fall went where the account says, the connecting subsystem follows its curve, distances add up,
 * ratios are quotients. Whoever changes a number has to change many others as well to get past.
 */
final class StoredNumbers {
    private static final double TIGHT = 1e-9;
    private static final double BALANCE = 1e-6;

    /** Share of the energy of a fall by which an account in time may fail to close: drift of the integration, about 1e-5. */
    private static final double DRIFT = 1e-3;

    private final LifelineDesign design;
    private final List<StoredCheck> checks = new ArrayList<>();

    private StoredNumbers(LifelineDesign design) {
        this.design = design;
    }

    static List<StoredCheck> check(LifelineDesign design, JsonNode result) {
        StoredNumbers numbers = new StoredNumbers(design);
        double cable = 0;
        for (JsonNode span : result.path("installed").path("spans")) {
            cable += span.path("unstretchedLength").asDouble(Double.NaN);
        }
        double weight = cable * design.line().weightPerLength();
        int i = 0;
        for (JsonNode arrest : result.path("arrests")) {
            numbers.arrest("arrests[" + i++ + "]", arrest, weight);
        }
        i = 0;
        for (JsonNode arrest : result.path("heldArrests")) {
            numbers.arrest("heldArrests[" + i++ + "]", arrest, weight);
        }
        i = 0;
        for (JsonNode criterion : result.path("criteria")) {
            numbers.criterion("criteria[" + i++ + "]", criterion);
        }
        numbers.governing(result);
        numbers.options(result);
        return List.copyOf(numbers.checks);
    }

    /** What a result says that was asked for is what its other parts say that was done. */
    private void options(JsonNode result) {
        JsonNode assessment = result.path("assessment");
        said(result, "options/motion", assessment.path("motion").path("scope").asText());
        said(result, "options/basis", assessment.path("basis").asText());
        said(result, "options/method", result.at("/arrests/0/method").asText().replace(' ', '-'));
        said(result, "version", result.path("libraryVersion").asText());
    }

    private void said(JsonNode result, String key, String elsewhere) {
        JsonNode said = result.at("/provenance/" + key);
        if (said.isTextual() && !elsewhere.isEmpty()) {
            double off = said.asText().equals(elsewhere) ? 0 : 1;
            add("provenance." + key.replace('/', '.'), "is what the result says elsewhere", off, 1, TIGHT);
        }
    }

    private static double number(JsonNode node, String key) {
        return node.path(key).asDouble(Double.NaN);
    }

    private void add(String where, String law, double difference, double scale, double limit) {
        boolean finite = Double.isFinite(difference) && Double.isFinite(scale);
        double off = finite ? Math.abs(difference) / Math.max(Math.abs(scale), 1e-300) : Double.NaN;
        checks.add(new StoredCheck(where, law, off, limit));
    }

    private void arrest(String where, JsonNode a, double cableWeight) {
        Optional<Fall> fall = design.falls().stream()
                .filter(f -> f.id().equals(a.path("fall").asText()))
                .findFirst();
        lengths(where, a);
        if (moving(a)) {
            // Peaks of a motion are met at different times, and no equilibrium.
            fall.ifPresent(f -> peaks(where, a, f));
        } else {
            fall.ifPresent(f -> forces(where, a, f, cableWeight));
            fall.ifPresent(f -> energy(where, a, f));
        }
        account(where, a, fall.isPresent() && fall.get().fallers().size() > 1);
        distances(where, a);
        clearance(where + ".clearance", a);
    }

    /** The force on each support is the length of its vector. */
    private void lengths(String where, JsonNode a) {
        for (int i = 0; i < a.path("supports").size(); i++) {
            JsonNode s = a.path("supports").get(i);
            double square = 0;
            for (int k = 0; k < 3; k++) {
                double v = s.path("vector").path(k).asDouble(Double.NaN);
                square += v * v;
            }
            double force = number(s, "force");
            add(
                    where + ".supports[" + i + "]",
                    "force is the length of its vector",
                    Math.sqrt(square) - force,
                    force,
                    TIGHT);
        }
    }

    /** An arrest in time: the first catch is a part of the whole run, and a worker's force one of the curve. */
    private void peaks(String where, JsonNode a, Fall fall) {
        JsonNode whole = a.path("motion").path("wholeRun");
        part(where, "maximumTension", whole.path("maximumTension"), number(a, "maximumTension"));
        for (int i = 0; i < a.path("supports").size(); i++) {
            part(
                    where + ".supports[" + i + "]",
                    "force",
                    whole.path("supports").path(i).path("force"),
                    number(a.path("supports").get(i), "force"));
        }
        double most = 0;
        for (JsonNode worker : whole.path("workers")) {
            most = Math.max(most, worker.path("arrestForce").asDouble());
        }
        double arrestForce = number(a, "arrestForce");
        String law = "the first catch is a part of the whole run";
        add(where + ".arrestForce", law, Math.max(0, arrestForce - most), most, TIGHT);
        if (fall.fallers().size() == 1) {
            LoadingCurve curve = curve(a, fall);
            double x = number(a, "deployment");
            onCurve(where, "force", curve, x, arrestForce);
            double taken = number(a.path("energy"), "connection");
            add(
                    where,
                    "the connecting subsystem takes no more than the work of its curve",
                    Math.max(0, taken - curve.work(x)),
                    taken,
                    BALANCE);
        }
    }

    private void onCurve(String where, String what, LoadingCurve curve, double x, double force) {
        double outside = Math.max(0, Math.max(curve.nearExtension(force) - x, x - curve.farExtension(force)));
        add(where, "deployment and " + what + " are a point of the curve", outside, Math.max(x, 1), BALANCE);
    }

    /** The curve of the one who falls. */
    private static LoadingCurve curve(JsonNode a, Fall fall) {
        DeploymentForce side =
                a.path("force").asText().equals("clearance") ? DeploymentForce.CLEARANCE : DeploymentForce.MAXIMUM;
        Connection connection = fall.fallers().get(0).connection();
        double t = number(a, "temperature");
        boolean possible = t > PlausibleRange.TEMPERATURE.lowest() && t < PlausibleRange.TEMPERATURE.highest();
        return possible ? connection.curve(side, t) : connection.curve(side);
    }

    private void part(String where, String key, JsonNode whole, double first) {
        double most = whole.asDouble(Double.NaN);
        String law = "the first catch is a part of the whole run";
        add(where + "." + key, law, Math.max(0, first - most), most, TIGHT);
    }

    private void forces(String where, JsonNode a, Fall fall, double cableWeight) {
        double[] sum = new double[3];
        double largest = 0;
        double ends = 0;
        int n = a.path("supports").size();
        for (int i = 0; i < n; i++) {
            JsonNode s = a.path("supports").get(i);
            for (int k = 0; k < 3; k++) {
                sum[k] += s.path("vector").path(k).asDouble(Double.NaN);
            }
            double force = number(s, "force");
            largest = Math.max(largest, force);
            ends = i == 0 || i == n - 1 ? Math.max(ends, force) : ends;
        }
        double g = design.line().gravity();
        double hanging =
                fall.hanging().stream().mapToDouble(h -> h.worker().mass() * g).sum();
        double load = number(a, "lineLoad");
        add(where, "horizontal forces on the supports cancel (x)", sum[0], largest, BALANCE);
        add(where, "horizontal forces on the supports cancel (y)", sum[1], largest, BALANCE);
        add(
                where,
                "supports carry the load, those who hang, and the cable",
                sum[2] + load + hanging + cableWeight,
                largest,
                BALANCE);
        double most = number(a, "maximumTension");
        add(where, "no end anchor gets more than the largest tension", Math.max(0, ends - most - load), most, TIGHT);
    }

    private void energy(String where, JsonNode a, Fall fall) {
        if (fall.fallers().size() != 1) {
            return;
        }
        double x = number(a, "deployment");
        double load = number(a, "lineLoad");
        double weight = fall.fallingMass() * design.line().gravity();
        double height = number(a, "freeFall") + number(a, "lineDescent") + x;
        double free = number(a.path("energy"), "fall");
        add(where, "energy of the fall is weight times height", weight * height - free, free, BALANCE);
        LoadingCurve curve = curve(a, fall);
        add(
                where,
                "work of the connecting subsystem is that of its curve",
                curve.work(x) - number(a.path("energy"), "connection"),
                free,
                BALANCE);
        onCurve(where, "load", curve, x, load);
        add(where, "one worker carries the whole load", number(a, "arrestForce") - load, load, TIGHT);
        double line = number(a.path("energy"), "fall") - number(a.path("energy"), "connection");
        double descent = number(a, "lineDescent");
        // The load grows from nothing to its last value while the attachment goes down.
        add(where, "the line takes no more than load times descent", Math.max(0, line - load * descent), free, BALANCE);
    }

    /** The account of several who fall together may be a bound (decision 33): then the line takes more than the fall gives. */
    private void account(String where, JsonNode a, boolean together) {
        JsonNode e = a.path("energy");
        double parts = number(e, "line")
                + number(e, "connection")
                + number(e, "friction")
                + number(e, "inlineAbsorbers")
                + number(e, "anchors");
        double free = number(e, "fall");
        boolean moving = moving(a);
        add(
                where + ".energy",
                together
                        ? "the parts add up to no less than the energy of the fall"
                        : "the parts add up to the energy of the fall",
                together ? Math.max(0, free - parts) : free - parts,
                free,
                moving ? DRIFT : BALANCE);
        add(where + ".energy", "the residual is what is left over", free - parts - number(e, "residual"), free, TIGHT);
    }

    private static boolean moving(JsonNode a) {
        return a.path("method").asText().equals(Method.TRANSIENT.label());
    }

    private void distances(String where, JsonNode a) {
        boolean moving = moving(a);
        int fallers = design.falls().stream()
                .filter(f -> f.id().equals(a.path("fall").asText()))
                .mapToInt(f -> f.fallers().size())
                .sum();
        if (moving && fallers != 1) {
            return; // The account is that of the one who reaches lowest, not always of the one who falls furthest.
        }
        double total = number(a, "freeFall")
                + (moving ? reach(a) : number(a, "deployment"))
                + number(a, "lineDescent")
                + design.clearance().harnessStretch();
        double stated = number(a, "totalFallDistance");
        add(where, "the total fall distance is the sum of its parts", total - stated, stated, TIGHT);
        if (moving) {
            add(
                    where,
                    "the deployment is not less than the extension at the lowest point",
                    Math.max(0, row(a, "deployment") - number(a, "deployment")),
                    stated,
                    TIGHT);
        }
    }

    /** How far the extended connecting subsystem reaches down at the lowest point, beyond its taut length. */
    private static double reach(JsonNode a) {
        return row(a, "deployment") + row(a, "connecting subsystem out of plumb");
    }

    /** Value of a row of the clearance account; zero where there is none. */
    private static double row(JsonNode a, String item) {
        for (JsonNode row : a.path("clearance").path("rows")) {
            if (row.path("item").asText().equals(item)) {
                return number(row, "value");
            }
        }
        return 0;
    }

    private void clearance(String where, JsonNode a) {
        JsonNode c = a.path("clearance");
        JsonNode rows = c.path("rows");
        double z = Double.NaN;
        double first = Double.NaN;
        for (int i = 0; i < rows.size(); i++) {
            double elevation = number(rows.get(i), "elevation");
            if (i == 0) {
                first = elevation;
            } else {
                double value = number(rows.get(i), "value");
                add(
                        where + ".rows[" + i + "]",
                        "each elevation is the one above less the step",
                        z - value - elevation,
                        Math.max(1, Math.abs(elevation)),
                        TIGHT);
            }
            z = elevation;
        }
        add(
                where,
                "what is required below the line is the way down",
                first - z - number(c, "requiredBelowLine"),
                Math.max(1, Math.abs(first)),
                TIGHT);
        add(
                where,
                "the first step is the descent of the line",
                number(rows.path(1), "value") - number(a, "lineDescent"),
                1,
                TIGHT);
        if (c.has("obstruction")) {
            add(
                    where,
                    "the margin is what is left above the obstruction",
                    z - number(c, "obstruction") - number(c, "margin"),
                    Math.max(1, Math.abs(z)),
                    TIGHT);
        }
    }

    private void criterion(String where, JsonNode c) {
        if (!c.hasNonNull("demand") || !c.hasNonNull("capacity") || !c.hasNonNull("ratio")) {
            return;
        }
        double demand = number(c, "demand");
        double capacity = number(c, "capacity");
        add(
                where,
                "the ratio is demand over capacity",
                demand / capacity - number(c, "ratio"),
                number(c, "ratio"),
                BALANCE);
        if (c.path("met").isBoolean() && capacity > 0) {
            boolean holds = demand <= capacity;
            add(
                    where,
                    "the verdict follows from demand and capacity",
                    holds == c.path("met").booleanValue() ? 0 : 1,
                    1,
                    0);
        }
    }

    /** What governs is a number of the arrest that it names. */
    private void governing(JsonNode result) {
        result.path("governing").properties().forEach(entry -> {
            JsonNode g = entry.getValue();
            if (!g.has("value")) {
                return;
            }
            List<JsonNode> all = new ArrayList<>();
            result.path("arrests").forEach(all::add);
            result.path("heldArrests").forEach(all::add);
            for (JsonNode a : all) {
                boolean same = a.path("fall").equals(g.path("fall"))
                        && a.path("temperature").asDouble()
                                == g.path("temperature").asDouble()
                        && a.path("force").equals(g.path("force"))
                        && a.path("attachmentLimit").equals(g.path("attachmentLimit"));
                if (same && a.path(entry.getKey()).isNumber()) {
                    double value = number(a, entry.getKey());
                    add(
                            "governing." + entry.getKey(),
                            "it is the number of the arrest that it names",
                            value - number(g, "value"),
                            Math.max(1, Math.abs(value)),
                            TIGHT);
                }
            }
        });
    }
}
