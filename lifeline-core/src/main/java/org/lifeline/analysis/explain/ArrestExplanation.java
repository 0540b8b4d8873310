package org.lifeline.analysis.explain;

import static org.lifeline.analysis.explain.Expression.minus;
import static org.lifeline.analysis.explain.Expression.notNegative;
import static org.lifeline.analysis.explain.Expression.over;
import static org.lifeline.analysis.explain.Expression.size;
import static org.lifeline.analysis.explain.Expression.sum;
import static org.lifeline.analysis.explain.Expression.times;

import java.util.ArrayList;
import java.util.List;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.LineEquilibrium;
import org.lifeline.analysis.Method;
import org.lifeline.analysis.SpanState;
import org.lifeline.analysis.Statics;
import org.lifeline.analysis.clearance.Clearance;
import org.lifeline.analysis.clearance.ClearanceRow;
import org.lifeline.base.UnitSystem;
import org.lifeline.base.unit.Dimension;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.LoadingCurve;

/** Writes down an arrest, from the inputs to the clearance, line by line. */
final class ArrestExplanation {
    private final ArrestResult arrest;
    private final Lifeline line;
    private final Fall fall;
    private final CalculationSheet sheet;
    private final String falling;

    private ArrestExplanation(ArrestResult arrest, UnitSystem system) {
        this.arrest = arrest;
        this.line = arrest.line();
        this.fall = arrest.fall();
        this.sheet = new CalculationSheet(system);
        this.falling = Integer.toString(arrest.span());
    }

    /** Figures that later sections refer to. */
    private record Falling(BalanceExplanation.Falling falling, Figure gravity, Figure line) {
        Figure freeFall() {
            return falling.freeFall();
        }
    }

    static List<CalculationStep> of(ArrestResult arrest, UnitSystem system) {
        return new ArrestExplanation(arrest, system).write();
    }

    private List<CalculationStep> write() {
        LineEquilibrium before = arrest.before();
        sheet.section("Cable");
        CableFigures cold = CableFigures.cable(sheet, line);
        boolean asInstalled = before.temperature() == line.installed().temperature()
                && before.loads().isEmpty();
        if (!asInstalled) {
            LineEquilibrium installed = Statics.withDefaults().solve(line, List.of());
            new LineExplanation(sheet, installed, cold, "i").writeSpans(", as installed", false);
        }
        sheet.section("Cable at the temperature of the fall");
        CableFigures cable = cold.at(sheet, line, arrest.temperature());
        LineExplanation beforeLines = new LineExplanation(sheet, before, cable, "b");
        beforeLines.writeSpans(asInstalled ? ", as installed and before the fall" : ", before the fall", true);
        boolean elastic = line.supports().stream().anyMatch(s -> !s.stiffness().isRigid());
        if (elastic) {
            beforeLines.writeSupports("Supports before the fall");
        }
        Falling f = writeFreeFall(beforeLines);
        if (arrest.method() == Method.TRANSIENT) {
            MotionExplanation.Figures m = new MotionExplanation(sheet, arrest).write();
            writeClearance(f, m.descent(), m.deployment());
            return sheet.finish();
        }
        boolean rest = arrest.method() == Method.RESCUE_AT_REST;
        LineExplanation peak = new LineExplanation(sheet, arrest.peak(), cable, "");
        peak.writeSpans(rest ? ", at rest with a rescuer" : ", at the lowest point", true);
        Figure descent = writeDescent(peak, f);
        peak.writeSupports(rest ? "Supports at rest with a rescuer" : "Supports at the lowest point");
        if (rest) {
            Figure torn = sheet.given(
                    "x", "deployment", arrest.deployment(), Dimension.LENGTH, "the arrest before, by energy balance");
            writeClearance(f, descent, torn);
            return sheet.finish();
        }
        Figure deployment = new BalanceExplanation(sheet, arrest)
                .write(beforeLines, peak, new BalanceExplanation.Drop(f.falling(), f.gravity(), descent));
        writeClearance(f, descent, deployment);
        return sheet.finish();
    }

    private Falling writeFreeFall(LineExplanation before) {
        sheet.section("Free fall");
        Figure zLine = writeStart(before);
        Figure g = sheet.given("g", "acceleration of gravity", line.gravity(), Dimension.WEIGHT_PER_MASS, "design");
        List<Figure> masses = new ArrayList<>();
        List<Figure> falls = new ArrayList<>();
        for (int i = 0; i < fall.fallers().size(); i++) {
            Worker w = fall.fallers().get(i);
            String k = "_" + (i + 1);
            masses.add(sheet.given("m" + k, "mass of " + w.id(), w.mass(), Dimension.MASS, "design"));
            falls.add(freeFall(w, k, zLine));
        }
        if (falls.size() == 1) {
            return new Falling(
                    new BalanceExplanation.Falling(masses.get(0), falls.get(0), each(masses, falls)), g, zLine);
        }
        Figure mass = sheet.row("m", "mass of all who fall", sum(masses), Dimension.MASS, "sum");
        List<Expression> moments = new ArrayList<>();
        for (int i = 0; i < falls.size(); i++) {
            moments.add(times(masses.get(i), falls.get(i)));
        }
        Figure mean = sheet.row(
                "h",
                "free fall, weighted by mass",
                over(sum(moments), mass),
                Dimension.LENGTH,
                "energy of those who fall together");
        return new Falling(new BalanceExplanation.Falling(mass, mean, each(masses, falls)), g, zLine);
    }

    private static List<BalanceExplanation.Faller> each(List<Figure> masses, List<Figure> falls) {
        List<BalanceExplanation.Faller> list = new ArrayList<>();
        for (int i = 0; i < masses.size(); i++) {
            list.add(new BalanceExplanation.Faller(masses.get(i), falls.get(i)));
        }
        return list;
    }

    /** Elevation of what the connection holds on to, before the fall. */
    private Figure writeStart(LineExplanation before) {
        if (fall.place().isAtSupport()) {
            return sheet.given(
                    "z_b",
                    "elevation of the support before the fall",
                    arrest.attachmentBefore().z(),
                    Dimension.LENGTH,
                    "position and displacement");
        }
        LineExplanation.Spot at =
                LineExplanation.locate(arrest.before().span(arrest.span()), arrest.attachmentBefore());
        return before.span(arrest.span()).writePoint("b" + falling + "h", at);
    }

    private Figure freeFall(Worker w, String k, Figure zLine) {
        if (fall.freeFall().isPresent()) {
            return sheet.given(
                    "h" + k,
                    "free fall of " + w.id(),
                    fall.freeFall().getAsDouble(),
                    Dimension.LENGTH,
                    "design: overrides the geometry");
        }
        Figure level = sheet.given("z_w" + k, "walking level", w.walkingLevel(), Dimension.LENGTH, "design");
        Figure height = sheet.given(
                "a_h" + k, "height of the harness attachment", w.attachmentHeight(), Dimension.LENGTH, "design");
        Figure harness = sheet.row(
                "z_h" + k, "elevation of the harness attachment", sum(level, height), Dimension.LENGTH, "sum");
        Connection c = w.connection();
        Figure taut;
        if (c.kind() == Connection.Kind.SELF_RETRACTING) {
            Figure lock =
                    sheet.given("l_0" + k, "lock-up distance with slack", c.tautLength(0), Dimension.LENGTH, "design");
            taut = sheet.row(
                    "l" + k,
                    "length paid out at lock-up",
                    sum(size(minus(zLine, harness)), lock),
                    Dimension.LENGTH,
                    "geometry");
        } else {
            taut = sheet.given("l" + k, "taut length of the connection", c.tautLength(0), Dimension.LENGTH, "design");
        }
        return sheet.row(
                "h" + k,
                "free fall of the harness attachment of " + w.id(),
                notNegative(minus(sum(taut, harness), zLine)),
                Dimension.LENGTH,
                "geometry: taut length less the height of the line above the harness attachment");
    }

    private Figure writeDescent(LineExplanation peak, Falling f) {
        if (fall.place().isAtSupport()) {
            sheet.section("Descent of the support");
            Figure lowest = sheet.given(
                    "z_p",
                    "elevation of the support at the lowest point",
                    arrest.attachmentAtPeak().z(),
                    Dimension.LENGTH,
                    "position and displacement");
            return sheet.row(
                    "δ",
                    "descent of the support since before the fall",
                    minus(f.line(), lowest),
                    Dimension.LENGTH,
                    "difference");
        }
        sheet.section("Descent and sag at the load"
                + arrest.attachmentLimit()
                        .map(l -> ", the attachment " + l.label())
                        .orElse(""));
        SpanExplanation span = peak.span(arrest.span());
        SpanState state = arrest.peak().span(arrest.span());
        int piece = LineExplanation.pieceBefore(state, arrest.attachmentAtPeak()) + 1;
        Figure z = span.elevation(piece);
        Figure descent = sheet.row(
                "δ",
                "descent of the attachment since before the fall",
                minus(f.line(), z),
                Dimension.LENGTH,
                "difference");
        Figure a = sheet.row(
                "a",
                "distance of the load from the span's first support",
                span.distance(piece),
                Dimension.LENGTH,
                "sum");
        Figure support = sheet.given(
                "z_" + falling,
                "elevation of the span's first support",
                state.firstSupport().z(),
                Dimension.LENGTH,
                "positions of the supports");
        sheet.row(
                "f",
                "sag at the load, below the chord",
                minus(sum(support, over(times(a, span.rise()), span.run())), z),
                Dimension.LENGTH,
                "geometry");
        return descent;
    }

    private void writeClearance(Falling f, Figure descent, Figure deployment) {
        sheet.section("Fall distance and clearance");
        Clearance c = arrest.clearance();
        Figure longest = fall.fallers().size() == 1
                ? f.freeFall()
                : sheet.given("h_m", "longest free fall", arrest.freeFall(), Dimension.LENGTH, "largest of them");
        Figure harness = sheet.given("a_s", "harness stretch", arrest.harnessStretch(), Dimension.LENGTH, "design");
        sheet.row("h_t", "total fall distance", sum(longest, deployment, descent, harness), Dimension.LENGTH, "sum");
        Figure z = f.line();
        List<ClearanceRow> rows = c.rows();
        Figure start = z;
        for (int i = 1; i < rows.size(); i++) {
            ClearanceRow row = rows.get(i);
            String k = "_" + i;
            Figure step;
            if (row.value() == arrest.lineDescent()) {
                step = descent;
            } else if (Math.abs(row.value() - arrest.reach()) < Tolerances.LENGTH) {
                step = deployment;
            } else {
                step = sheet.given("d" + k, row.item(), row.value(), Dimension.LENGTH, row.source());
            }
            z = sheet.row("z_c" + i, "elevation below: " + row.item(), minus(z, step), Dimension.LENGTH, "account");
        }
        sheet.row("C_l", "clearance required below the line", minus(start, z), Dimension.LENGTH, "difference");
        if (c.obstruction().isPresent()) {
            Figure o = sheet.given(
                    "z_o",
                    "top of the highest obstruction below",
                    c.obstruction().getAsDouble(),
                    Dimension.LENGTH,
                    "design");
            sheet.row("C_m", "margin above it", minus(z, o), Dimension.LENGTH, "difference");
        }
    }

    /** The curve that all who fall together share. */
    static LoadingCurve curve(ArrestResult arrest) {
        return LoadingCurve.parallel(arrest.fall().fallers().stream()
                .map(w -> w.connection().curve(arrest.side(), arrest.temperature()))
                .toList());
    }
}
