package org.lifeline.file;

import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.lifeline.base.InputRule;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.PlausibleRange;
import org.lifeline.base.Violation;
import org.lifeline.base.unit.Dimension;
import org.lifeline.file.Fields.Range;
import org.lifeline.model.Attachment;
import org.lifeline.model.Connection;
import org.lifeline.model.Connection.PersonalAbsorber;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.AbsorberCondition;
import org.lifeline.model.absorber.LoadingCurve;

/** Reads one of {@code workers}. */
final class WorkerReader {
    private static final String[] KINDS = {"absorber", "loadingCurve", "stiffness", "retractable"};

    private WorkerReader() {}

    static @Nullable Worker read(Fields f) {
        String id = f.requiredText("id");
        if (id != null && id.isBlank()) {
            f.findings().bad(f.path("id"), f.node("id"), InputRule.BLANK);
        }
        Worker.Builder b = Worker.builder(id == null ? "?" : id);
        b.mass(f.requiredQuantity("mass", Dimension.MASS, Range.POSITIVE));
        b.walkingLevel(f.requiredQuantity("walkingLevel", Dimension.LENGTH, Range.ANY));
        double height = f.quantity("attachmentHeight", Dimension.LENGTH, Range.POSITIVE);
        if (!Double.isNaN(height)) {
            b.attachmentHeight(height);
        }
        double offset = f.quantity("offset", Dimension.LENGTH, Range.NOT_NEGATIVE);
        if (!Double.isNaN(offset)) {
            b.offset(offset);
        }
        String attachment = f.choice("attachment", List.of("gripped", "free-running"));
        if (attachment != null) {
            b.attachment(attachment.equals("gripped") ? Attachment.GRIPPED : Attachment.FREE_RUNNING);
        }
        f.required("connection");
        Fields c = f.object("connection");
        if (c != null) {
            Connection connection = connection(c);
            if (connection != null) {
                b.connection(connection);
            }
        }
        f.close();
        return f.build(b::build);
    }

    private static @Nullable Connection connection(Fields c) {
        int kinds = c.count(KINDS);
        if (kinds != 1) {
            c.findings()
                    .say(
                            c.path(),
                            kinds == 0 ? "missing" : "given more than once",
                            FileRule.EXACTLY_ONE,
                            String.join(", ", KINDS));
        }
        double taut = Double.NaN;
        if (!c.has("retractable")) {
            taut = c.requiredQuantity("tautLength", Dimension.LENGTH, Range.NOT_NEGATIVE);
        } else if (c.has("tautLength")) {
            c.findings().bad(c.path("tautLength"), c.node("tautLength"), FileRule.OF_A_LANYARD);
        }
        double stop = c.quantity("stopStiffness", Dimension.FORCE_PER_LENGTH, Range.POSITIVE);
        if (c.has("stopStiffness") && kinds == 1 && !c.has("loadingCurve")) {
            c.findings().bad(c.path("stopStiffness"), c.node("stopStiffness"), FileRule.BESIDE_LOADING_CURVE);
        }
        double stiffness = c.quantity("stiffness", Dimension.FORCE_PER_LENGTH, Range.POSITIVE);
        List<double[]> pairs = c.pairs("loadingCurve", Dimension.LENGTH, Dimension.FORCE);
        Fields a = c.object("absorber");
        PersonalAbsorber absorber = a == null ? null : absorber(a);
        Fields r = c.object("retractable");
        Connection retractable = r == null ? null : retractable(r);
        c.close();
        if (!c.clean()) {
            return null;
        }
        if (retractable != null) {
            return retractable;
        }
        double length = taut;
        if (absorber != null) {
            return c.build(() -> Connection.lanyard(length, absorber));
        }
        if (c.has("stiffness")) {
            return build(
                    c,
                    Map.of("stopStiffness", "stiffness"),
                    () -> Connection.plainLanyard(length, LoadingCurve.spring(stiffness)));
        }
        return build(
                c,
                Map.of("curve", "loadingCurve"),
                () -> Connection.givenCurve(
                        length,
                        LoadingCurve.through(
                                SupportReader.corners(pairs), Double.POSITIVE_INFINITY, SupportReader.orRigid(stop))));
    }

    private static @Nullable PersonalAbsorber absorber(Fields a) {
        Connection.AbsorberBuilder b = PersonalAbsorber.builder();
        b.clearanceForce(a.requiredQuantity("clearanceForce", Dimension.FORCE, Range.POSITIVE));
        b.maximumForce(a.requiredQuantity("maximumForce", Dimension.FORCE, Range.POSITIVE));
        lengths(a, b);
        conditions(a, b);
        a.close();
        return a.build(b::build);
    }

    private static @Nullable Connection retractable(Fields r) {
        Connection.AbsorberBuilder b = PersonalAbsorber.builder();
        double lock = r.requiredQuantity("lockDistance", Dimension.LENGTH, Range.NOT_NEGATIVE);
        double slack =
                r.within("slack", r.quantity("slack", Dimension.LENGTH, Range.NOT_NEGATIVE), PlausibleRange.LENGTH);
        r.required("brakeForce");
        Fields force = r.object("brakeForce");
        if (force != null) {
            b.clearanceForce(force.requiredQuantity("clearance", Dimension.FORCE, Range.POSITIVE));
            b.maximumForce(force.requiredQuantity("maximum", Dimension.FORCE, Range.POSITIVE));
            force.close();
        }
        lengths(r, b);
        conditions(r, b);
        r.close();
        return build(
                r,
                Map.of("clearanceForce", "brakeForce.clearance", "maximumForce", "brakeForce.maximum"),
                () -> Connection.selfRetracting(lock + (Double.isNaN(slack) ? 0 : slack), b.build()));
    }

    private static void lengths(Fields f, Connection.AbsorberBuilder b) {
        b.maximumExtension(f.requiredQuantity("maximumExtension", Dimension.LENGTH, Range.POSITIVE));
        b.initialStiffness(
                SupportReader.orRigid(f.quantity("initialStiffness", Dimension.FORCE_PER_LENGTH, Range.POSITIVE)));
        b.stopStiffness(SupportReader.orRigid(f.quantity("stopStiffness", Dimension.FORCE_PER_LENGTH, Range.POSITIVE)));
    }

    /** Forces for conditions other than dry. */
    private static void conditions(Fields f, Connection.AbsorberBuilder b) {
        Fields all = f.object("conditions");
        if (all == null) {
            return;
        }
        for (AbsorberCondition.Kind kind : AbsorberCondition.Kind.values()) {
            Fields c = all.object(kind.label());
            AbsorberCondition condition = c == null ? null : condition(kind, c);
            if (condition != null) {
                b.condition(condition);
            }
        }
        all.close();
    }

    private static @Nullable AbsorberCondition condition(AbsorberCondition.Kind kind, Fields c) {
        AbsorberCondition.Builder b = AbsorberCondition.builder(kind);
        b.clearanceForce(c.requiredQuantity("clearanceForce", Dimension.FORCE, Range.POSITIVE));
        b.maximumForce(c.requiredQuantity("maximumForce", Dimension.FORCE, Range.POSITIVE));
        double temperature = c.quantity("temperature", Dimension.TEMPERATURE, Range.ANY);
        if (!Double.isNaN(temperature)) {
            b.temperature(temperature);
        }
        String source = c.requiredText("source");
        if (source != null) {
            b.source(source);
        }
        c.close();
        return c.build(b::build);
    }

    /** Builds a part whose fields have other names in the file than in the model. */
    private static @Nullable Connection build(
            Fields f, Map<String, String> names, java.util.function.Supplier<Connection> part) {
        if (!f.clean()) {
            return null;
        }
        try {
            return part.get();
        } catch (InvalidInputException e) {
            for (Violation v : e.violations()) {
                String head = v.path().split("[.\\[]", 2)[0];
                f.report(v, names.getOrDefault(head, head) + v.path().substring(head.length()));
            }
            return null;
        }
    }
}
