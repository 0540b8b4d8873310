package org.lifeline.analysis.explain;

import static org.lifeline.analysis.explain.Expression.arccos;
import static org.lifeline.analysis.explain.Expression.arctan;
import static org.lifeline.analysis.explain.Expression.half;
import static org.lifeline.analysis.explain.Expression.length;
import static org.lifeline.analysis.explain.Expression.ln;
import static org.lifeline.analysis.explain.Expression.minus;
import static org.lifeline.analysis.explain.Expression.number;
import static org.lifeline.analysis.explain.Expression.over;
import static org.lifeline.analysis.explain.Expression.size;
import static org.lifeline.analysis.explain.Expression.sum;
import static org.lifeline.analysis.explain.Expression.times;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.lifeline.analysis.CablePiece;
import org.lifeline.analysis.LineEquilibrium;
import org.lifeline.analysis.SpanState;
import org.lifeline.analysis.state.LoadPosition;
import org.lifeline.base.Point;
import org.lifeline.base.UnitSystem;
import org.lifeline.base.Vector3;
import org.lifeline.base.unit.Dimension;
import org.lifeline.model.Installed;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;

/** Writes down a line in equilibrium, line by line. */
final class LineExplanation {
    private final CalculationSheet sheet;
    private final LineEquilibrium state;
    private final CableFigures cable;
    private final String tag;
    private final List<SpanExplanation> spans = new ArrayList<>();
    private final List<Figure> springEnergies = new ArrayList<>();

    /**
     * A writer.
     *
     * @param sheet where it writes
     * @param state what it writes down
     * @param cable the cable's figures at the temperature of the state
     * @param tag index that tells this state from others on the sheet
     */
    LineExplanation(CalculationSheet sheet, LineEquilibrium state, CableFigures cable, String tag) {
        this.sheet = sheet;
        this.state = state;
        this.cable = cable;
        this.tag = tag;
    }

    /** The whole explanation of an equilibrium. */
    static List<CalculationStep> of(LineEquilibrium state, UnitSystem system) {
        CalculationSheet sheet = new CalculationSheet(system);
        CableFigures cable = CableFigures.write(sheet, state.line(), state.temperature());
        LineExplanation lines = new LineExplanation(sheet, state, cable, "");
        lines.writeSpans("", false);
        lines.writeSupports("Supports");
        return sheet.finish();
    }

    /** Spans, one section each; with the energies of the cable if they are wanted. */
    void writeSpans(String when, boolean energies) {
        for (SpanState each : state.spans()) {
            sheet.section("Span " + each.number() + when);
            SpanExplanation span = new SpanExplanation(sheet, cable, tag + each.number(), each);
            span.write(energies);
            spans.add(span);
        }
        sheet.section("Line" + when);
        writeClosings();
    }

    /** What ties the spans together: the number that fixed the line, and how the cable passes the anchors. */
    private void writeClosings() {
        Lifeline line = state.line();
        Installed in = line.installed();
        boolean asInstalled = state.loads().isEmpty() && state.temperature() == in.temperature();
        if (asInstalled) {
            SpanExplanation named = spans.get(in.span() - 1);
            String fixes = ": fixed by the installed state";
            switch (in.form()) {
                case PRETENSION ->
                    sheet.row(
                            "T_" + tag + "0",
                            "pretension at the first support" + fixes,
                            sum(spans.get(0).startTension()),
                            Dimension.FORCE,
                            "design");
                case HORIZONTAL_TENSION ->
                    sheet.row(
                            "H_" + tag + "0",
                            "horizontal tension" + fixes,
                            sum(named.horizontal()),
                            Dimension.FORCE,
                            "design");
                case INITIAL_SAG ->
                    named.sag()
                            .ifPresent(f ->
                                    sheet.row("f_" + tag + "0", "sag" + fixes, sum(f), Dimension.LENGTH, "design"));
                case UNSTRETCHED_LENGTH -> {
                    // The sum below is the number.
                }
            }
        }
        List<Expression> lengths = new ArrayList<>();
        spans.forEach(s -> lengths.addAll(s.lengths()));
        sheet.row(
                tag.isEmpty() ? "S" : "S_" + tag,
                "unstretched length of the line",
                sum(lengths),
                Dimension.LENGTH,
                "sum of the pieces");
        for (int i = 1; i < line.spans(); i++) {
            writePassage(line.supports().get(i), i);
        }
    }

    private void writePassage(Support support, int i) {
        Figure before = spans.get(i - 1).endTension();
        Figure behind = spans.get(i).startTension();
        String name = "tension behind over tension before support " + i;
        Passage passage = support.passage();
        if (passage.kind() == Passage.Kind.CLAMPED) {
            return;
        }
        boolean free = passage.kind() == Passage.Kind.FREE;
        Figure ratio = sheet.row(
                "r_" + tag + i,
                name + (free ? ": the cable runs freely, so it is 1" : ""),
                over(behind, before),
                Dimension.RATIO,
                "equilibrium");
        if (free) {
            return;
        }
        Vector3 a = last(state.span(i).pieces()).endTension();
        Vector3 b = state.span(i + 1).pieces().get(0).startTension();
        Figure angle = sheet.row("θ_" + tag + i, "angle turned there", turned(i, a, b), Dimension.ANGLE, "geometry");
        Figure friction =
                sheet.given("μ_" + tag + i, "coefficient of friction", passage.friction(), Dimension.RATIO, "design");
        sheet.row(
                "u_" + tag + i,
                "share of the friction that is used: between −1 and 1 it sticks, at the bound it slips",
                over(ln(ratio), times(friction, angle)),
                Dimension.RATIO,
                "capstan rule, Euler 1769, Eytelwein 1808");
    }

    /** The angle between the tension before a support and that behind it. */
    private Expression turned(int i, Vector3 a, Vector3 b) {
        SpanExplanation before = spans.get(i - 1);
        SpanExplanation behind = spans.get(i);
        double cos = (a.x() * b.x() + a.y() * b.y()) / (a.horizontal() * b.horizontal());
        if (cos > 1 - Tolerances.STRAIGHT) {
            // In one vertical plane: the difference of two slopes, which holds its digits where arccos loses them.
            return size(minus(
                    arctan(over(behind.startVertical(), behind.horizontal())),
                    arctan(over(before.endVertical(), before.horizontal()))));
        }
        Figure turn = sheet.given("c_" + tag + i, "cosine of the turn in plan", cos, Dimension.RATIO, "plan");
        Expression dot = sum(
                times(before.horizontal(), behind.horizontal(), turn),
                times(before.endVertical(), behind.startVertical()));
        return arccos(over(dot, times(before.endTension(), behind.startTension())));
    }

    /** Forces on the supports and how far they yield. */
    void writeSupports(String title) {
        sheet.section(title);
        int n = state.spans().size();
        boolean straight = state.spans().stream()
                .allMatch(s -> s.secondSupport().y() == s.firstSupport().y()
                        && s.secondSupport().x() > s.firstSupport().x());
        List<Figure> cosX = new ArrayList<>();
        List<Figure> cosY = new ArrayList<>();
        for (SpanState s : state.spans()) {
            if (!straight) {
                Vector3 t = s.pieces().get(0).startTension();
                String k = tag + s.number();
                cosX.add(sheet.given(
                        "cx_" + k,
                        "direction of span " + s.number() + " along x",
                        t.x() / t.horizontal(),
                        Dimension.RATIO,
                        "plan"));
                cosY.add(sheet.given(
                        "cy_" + k,
                        "direction of span " + s.number() + " along y",
                        t.y() / t.horizontal(),
                        Dimension.RATIO,
                        "plan"));
            }
        }
        for (int i = 0; i <= n; i++) {
            String of = " on " + state.supports().get(i).id();
            List<Figure> r = new ArrayList<>();
            r.add(component(i, "Rx_", "force along x" + of, cosX));
            if (!straight) {
                r.add(component(i, "Ry_", "force along y" + of, cosY));
            }
            r.add(vertical(i, "force along z" + of + ", up positive"));
            sheet.row(
                    "R_" + tag + i,
                    "force of the line" + of,
                    length(r.toArray(new Expression[0])),
                    Dimension.FORCE,
                    "equilibrium");
            writeYield(i, straight, r);
        }
    }

    private Figure component(int i, String symbol, String what, List<Figure> cosines) {
        Optional<Expression> behind = i < spans.size() ? Optional.of(directed(i, cosines)) : Optional.empty();
        Optional<Expression> before = i > 0 ? Optional.of(directed(i - 1, cosines)) : Optional.empty();
        return sheet.row(symbol + tag + i, what, difference(behind, before), Dimension.FORCE, "equilibrium");
    }

    private Expression directed(int span, List<Figure> cosines) {
        Figure h = spans.get(span).horizontal();
        return cosines.isEmpty() ? h : times(h, cosines.get(span));
    }

    private Figure vertical(int i, String what) {
        Optional<Expression> behind =
                i < spans.size() ? Optional.of(spans.get(i).startVertical()) : Optional.empty();
        Optional<Expression> before = i > 0 ? Optional.of(spans.get(i - 1).endVertical()) : Optional.empty();
        Expression force = difference(behind, before);
        String id = state.supports().get(i).id();
        for (int j = 0; j < state.loads().size(); j++) {
            LoadPosition load = state.loads().get(j);
            if (load.restsOn().filter(id::equals).isPresent()) {
                Figure p = sheet.given(
                        "Q_" + tag + i + "." + (j + 1),
                        "load that rests on " + id,
                        load.force(),
                        Dimension.FORCE,
                        "load " + (j + 1));
                force = minus(force, p);
            }
        }
        return sheet.row("Rz_" + tag + i, what, force, Dimension.FORCE, "equilibrium");
    }

    private static Expression difference(Optional<Expression> a, Optional<Expression> b) {
        if (a.isEmpty()) {
            return minus(number(0), b.orElseThrow());
        }
        return b.isEmpty() ? sum(a.get()) : minus(a.get(), b.get());
    }

    private void writeYield(int i, boolean straight, List<Figure> force) {
        Stiffness k = state.line().supports().get(i).stiffness();
        Vector3 u = state.supports().get(i).displacement();
        writeSpring(i, "x", k.x(), u.x(), force.get(0));
        if (!straight) {
            writeSpring(i, "y", k.y(), u.y(), force.get(1));
        }
        writeSpring(i, "z", k.z(), u.z(), force.get(force.size() - 1));
    }

    private void writeSpring(int i, String axis, double stiffness, double displacement, Figure force) {
        if (Double.isInfinite(stiffness)) {
            return;
        }
        String k = axis + "_" + tag + i;
        String id = state.supports().get(i).id();
        Figure spring = sheet.given(
                "k" + k, "stiffness of " + id + " along " + axis, stiffness, Dimension.FORCE_PER_LENGTH, "design");
        Figure moved = sheet.given(
                "u" + k, "displacement of " + id + " along " + axis, displacement, Dimension.LENGTH, "equilibrium");
        sheet.row(
                "R" + k + "i",
                "force along " + axis + " that " + id + " held as installed",
                minus(force, times(spring, moved)),
                Dimension.FORCE,
                "spring law: it yields to the change since installation");
        springEnergies.add(sheet.row(
                "U" + k,
                "energy of " + id + " along " + axis + " since installation",
                times(moved, minus(force, half(times(spring, moved)))),
                Dimension.ENERGY,
                "spring law"));
    }

    /** What elastic anchors have taken since installation; known after the supports have been written. */
    List<Figure> springEnergies() {
        return springEnergies;
    }

    /** The energy of the cable in this state. */
    List<Figure> energies() {
        List<Figure> list = new ArrayList<>();
        spans.forEach(s -> list.addAll(s.energies()));
        return list;
    }

    SpanExplanation span(int number) {
        return spans.get(number - 1);
    }

    private static <T> T last(List<T> list) {
        return list.get(list.size() - 1);
    }

    /** The figure of a load's elevation. */
    Figure elevationOf(LoadPosition load) {
        if (load.span() == 0) {
            String id = load.restsOn().orElseThrow();
            return sheet.given(
                    "z_" + tag + "s" + state.loads().indexOf(load),
                    "elevation of " + id + ", which carries a load",
                    load.point().z(),
                    Dimension.LENGTH,
                    "position and displacement");
        }
        SpanState span = state.span(load.span());
        return spans.get(load.span() - 1).elevation(pieceBefore(span, load.point()) + 1);
    }

    /** Number of the piece, from 0, that ends where a load hangs. */
    static int pieceBefore(SpanState span, Point load) {
        int best = 0;
        for (int j = 1; j < span.pieces().size() - 1; j++) {
            if (span.pieces().get(j).end().distance(load)
                    < span.pieces().get(best).end().distance(load)) {
                best = j;
            }
        }
        return best;
    }

    /**
     * A point of a span.
     *
     * @param piece number of its piece, from 0
     * @param length unstretched length from the start of the piece [m]
     */
    record Spot(int piece, double length) {}

    /** The point of a span that lies as far from the first support, in plan, as a given one. */
    static Spot locate(SpanState span, Point point) {
        for (int k = 0; k < span.pieces().size(); k++) {
            CablePiece piece = span.pieces().get(k);
            double low = 0;
            double high = piece.unstretchedLength();
            double run = span.firstSupport().horizontalDistance(point);
            double end = span.firstSupport().horizontalDistance(piece.end());
            if (run > end && k < span.pieces().size() - 1) {
                continue;
            }
            for (int i = 0; i < Tolerances.HALVINGS; i++) {
                double mid = 0.5 * (low + high);
                if (span.firstSupport().horizontalDistance(piece.pointAt(mid)) < run) {
                    low = mid;
                } else {
                    high = mid;
                }
            }
            return new Spot(k, 0.5 * (low + high));
        }
        throw new IllegalStateException("unreachable: a span has at least one piece");
    }
}
