package org.lifeline.report.picture;

import java.util.ArrayList;
import java.util.List;
import org.lifeline.analysis.clearance.Clearance;
import org.lifeline.analysis.clearance.ClearanceRow;
import org.lifeline.base.UnitSystem;
import org.lifeline.internal.svg.AxisScale;
import org.lifeline.internal.svg.AxisScale.Range;
import org.lifeline.internal.svg.LabelSpacing;
import org.lifeline.internal.svg.Pen;
import org.lifeline.internal.svg.SvgCanvas;
import org.lifeline.internal.svg.TextWidth;
import org.lifeline.report.document.QuantityKind;
import org.lifeline.report.document.RoundedAccount;

/** Draws the clearance account beside an elevation, on the same scale of heights. */
final class ClearanceLadder {
    /** Where the ladder stands in the picture [user units]. */
    static final double LEFT = 724;

    /** Where its labels end [user units]. */
    static final double RIGHT = 1060;

    private static final double TICK = 5;
    private static final double TEXT = 24;
    private static final double EDGE = 8;
    private static final double LABEL_GAP = 17;
    private static final double FOOT = 60;

    private final Clearance clearance;
    private final UnitSystem system;
    private final SvgCanvas c;
    private final AxisScale z;
    private final RoundedAccount account;

    ClearanceLadder(Clearance clearance, UnitSystem system, SvgCanvas c, AxisScale z) {
        this.clearance = clearance;
        this.system = system;
        this.c = c;
        this.z = z;
        List<Double> values = new ArrayList<>();
        List<ClearanceRow> rows = clearance.rows();
        rows.subList(1, rows.size()).forEach(r -> values.add(r.value()));
        account = RoundedAccount.down(clearance.lineElevation(), values, QuantityKind.LENGTH, system);
    }

    /** A step of the account: what it is, its digits, where it lies, whether it is what is left to the obstruction. */
    private record Step(String name, String value, Range place, boolean remainder) {
        double middle() {
            return 0.5 * (place.from() + place.to());
        }
    }

    private double pz(double elevation) {
        return z.at(QuantityKind.LENGTH.in(elevation, system));
    }

    private List<Step> steps(double bottom) {
        List<Step> steps = new ArrayList<>();
        List<ClearanceRow> rows = clearance.rows();
        for (int i = 1; i < rows.size(); i++) {
            if (rows.get(i).value() != 0) {
                steps.add(new Step(
                        rows.get(i).item().replace("connecting subsystem", "subsystem"),
                        QuantityKind.show(account.rows().get(i - 1)),
                        new Range(
                                pz(rows.get(i - 1).elevation()), pz(rows.get(i).elevation())),
                        false));
            }
        }
        if (clearance.margin().isPresent() && pz(clearance.obstruction().orElseThrow()) < bottom - 1) {
            double m = clearance.margin().getAsDouble();
            steps.add(new Step(
                    m >= 0 ? "clearance margin" : "LACKING: margin below zero",
                    QuantityKind.LENGTH.number(Math.abs(m), system),
                    new Range(
                            pz(clearance.requiredElevation()),
                            pz(clearance.obstruction().getAsDouble())),
                    true));
        }
        return steps;
    }

    /** Draws the ladder above the lower edge of the elevation. */
    void draw(double bottom) {
        double top = pz(clearance.lineElevation());
        c.bold(LEFT - 6, top - 20, "start", "clearance account [" + QuantityKind.LENGTH.unit(system) + "]");
        c.text(
                LEFT + EDGE,
                top + 4,
                "start",
                "line " + QuantityKind.show(account.totals().get(0)));
        List<Step> steps = steps(bottom);
        double[] places = new LabelSpacing(LABEL_GAP, new Range(top + 20, c.height() - FOOT))
                .spread(steps.stream().mapToDouble(Step::middle).toArray());
        for (int i = 0; i < steps.size(); i++) {
            Step s = steps.get(i);
            Pen pen = s.remainder() ? Pen.LIMIT : i % 2 == 0 ? Pen.INK : Pen.THIN;
            double at = s.remainder() ? LEFT + TICK : LEFT;
            c.line(pen, at, s.place().from(), at, s.place().to());
            c.line(
                    Pen.INK,
                    LEFT - TICK,
                    s.place().from(),
                    LEFT + TICK,
                    s.place().from());
            c.line(Pen.INK, LEFT - TICK, s.place().to(), LEFT + TICK, s.place().to());
            c.line(Pen.THIN, at + 2, s.middle(), LEFT + 20, places[i]);
            double room = RIGHT - EDGE - TextWidth.of(s.value()) - 10 - (LEFT + TEXT);
            c.text(LEFT + TEXT, places[i] + 4, "start", TextWidth.cut(s.name(), room));
            c.text(RIGHT - EDGE, places[i] + 4, "end", s.value());
        }
        c.text(
                LEFT - 9,
                Math.min(pz(clearance.lowestPoint()) + 4, bottom),
                "end",
                "lowest point "
                        + QuantityKind.show(
                                account.totals().get(clearance.rows().size() - 2)));
    }
}
