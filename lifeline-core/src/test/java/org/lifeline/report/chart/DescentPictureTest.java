package org.lifeline.report.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.LineEquilibrium;
import org.lifeline.analysis.Statics;
import org.lifeline.analysis.state.AppliedLoad;
import org.lifeline.model.Fall;
import org.lifeline.report.Xml;
import org.lifeline.report.document.Picture;
import org.lifeline.report.document.UnitChoice;
import org.lifeline.samples.SampleDesigns;

/** Load and energy against descent: points of the curve are states of equilibrium, and energies meet at the end. */
class DescentPictureTest {
    private static final Map<String, ArrestResult> ARRESTS = SampleDesigns.arrests();
    private static final List<String> FREE_OF_FRICTION = List.of("bottoms out", "fibre", "corner", "self-retracting");

    private static ArrestResult arrest(String name) {
        return java.util.Objects.requireNonNull(ARRESTS.get(name));
    }

    /** Descent of the attachment under a load of its own [m]. */
    private static double descent(ArrestResult r, double load) {
        List<AppliedLoad> loads = new ArrayList<>();
        for (Fall.Hanging h : r.fall().hanging()) {
            loads.add(new AppliedLoad(
                    h.place(), h.worker().attachment(), h.worker().mass() * 9.80665));
        }
        loads.add(new AppliedLoad(r.fall().place(), r.fall().fallers().get(0).attachment(), load));
        LineEquilibrium e =
                Statics.withDefaults().withTemperature(r.temperature()).solve(r.line(), loads);
        return r.attachmentBefore().z()
                - e.loads().get(loads.size() - 1).point().z();
    }

    @Test
    void everyRowOfTheTableIsAStateOfEquilibrium() {
        for (String name : FREE_OF_FRICTION) {
            ArrestResult r = arrest(name);
            Columns c = new Columns(DescentPicture.draw(r, UnitChoice.SI));
            double[] x = c.of("descent of the attachment [m]");
            double[] load = c.of("load P on the line [kN]");
            for (int i = 4; i < 20; i += 3) {
                // Straight between forty points that stand closer where the line is soft.
                assertThat(descent(r, 1000 * load[i]))
                        .as("%s at %s kN", name, load[i])
                        .isCloseTo(x[i], within(0.004 + 0.01 * r.lineDescent()));
            }
            assertThat(x[20]).isCloseTo(r.lineDescent(), within(0.0006));
            assertThat(load[20]).isCloseTo(r.lineLoad() / 1000, within(0.0051));
        }
    }

    @Test
    void tensionsRiseToThoseOfTheArrest() {
        for (Map.Entry<String, ArrestResult> each : ARRESTS.entrySet()) {
            ArrestResult r = each.getValue();
            Picture p = DescentPicture.draw(r, UnitChoice.SI);
            Shapes.of(p);
            Columns c = new Columns(p);
            String first = r.line().supports().get(0).id();
            String last = r.line().supports().get(r.line().spans()).id();
            double[] a = c.of("tension at " + first + " [kN]");
            double[] b = c.of("tension at " + last + " [kN]");
            assertThat(a[20]).as(each.getKey()).isCloseTo(r.peak().firstTension() / 1000, within(0.0051));
            assertThat(b[20]).as(each.getKey()).isCloseTo(r.peak().lastTension() / 1000, within(0.0051));
            assertThat(a[10]).isLessThanOrEqualTo(a[20]);
            assertThat(b[0]).as(each.getKey()).isLessThanOrEqualTo(b[20]);
        }
    }

    @Test
    void theWorkOfTheLineIsTheAreaBelowItsLoad() {
        for (String name : FREE_OF_FRICTION) {
            ArrestResult r = arrest(name);
            Columns c = new Columns(DescentPicture.draw(r, UnitChoice.SI));
            double[] work = c.of("taken by the line [J]");
            double[] left = c.of("left for the line [J]");
            double[] x = c.of("descent of the attachment [m]");
            double[] load = c.of("load P on the line [kN]");
            assertThat(work[0]).isZero();
            double area = 0;
            for (int i = 1; i < work.length; i++) {
                area += 500 * (load[i] + load[i - 1]) * (x[i] - x[i - 1]);
                assertThat(work[i]).as("%s row %d", name, i).isGreaterThanOrEqualTo(work[i - 1]);
            }
            // Trapezoids over the twenty intervals of the table and over the forty points of the drawing.
            assertThat(work[20]).as(name).isCloseTo(area, within(0.02 * area + 3));
            assertThat(work[20])
                    .as(name)
                    .isCloseTo(r.energy().lineWork(), within(0.02 * r.energy().lineWork() + 2));
            // A subsystem that still deploys lets the line of what is left drop at the end: read it in the drawing.
            Shapes s = Shapes.of(DescentPicture.draw(r, UnitChoice.SI));
            double[][] taken = s.polylines("ll-s1").get(1);
            double[][] rest = s.polylines("ll-s2").get(1);
            double unit = (taken[0][1] - taken[taken.length - 1][1]) / work[20];
            assertThat(rest[rest.length - 1][1])
                    .as(name)
                    .isCloseTo(taken[0][1] - unit * r.energy().lineWork(), within(1 * unit + 0.02));
            assertThat(left[19]).isGreaterThanOrEqualTo(work[19] - 1);
        }
    }

    @Test
    void whatIsLeftForTheLineIsTheFallLessWhatTheConnectionTakes() {
        ArrestResult r = arrest("plain lanyard");
        Columns c = new Columns(DescentPicture.draw(r, UnitChoice.SI));
        double[] x = c.of("descent of the attachment [m]");
        double[] load = c.of("load P on the line [kN]");
        double[] left = c.of("left for the line [J]");
        double mg = r.fall().fallingMass() * 9.80665;
        for (int i = 0; i < 20; i++) {
            // A lanyard like a spring of 60 kN/m: stretched P/k, it holds P²/2k.
            double stretch = 1000 * load[i] / 60_000;
            double held = 0.5 * 60_000 * stretch * stretch;
            double fallen = r.energy().fall() - mg * (r.lineDescent() - x[i] + r.deployment() - stretch);
            assertThat(left[i]).as("row %d", i).isCloseTo(fallen - held, within(15.0));
        }
    }

    @Test
    void whereTheLineTakesMoreThanIsLeftTheCurvesCrossAtTheArrest() {
        ArrestResult r = arrest("bottoms out");
        Columns c = new Columns(DescentPicture.draw(r, UnitChoice.SI));
        double[] work = c.of("taken by the line [J]");
        double[] left = c.of("left for the line [J]");
        for (int i = 0; i < 19; i++) {
            assertThat(left[i]).as("row %d", i).isGreaterThan(work[i]);
        }
    }

    @Test
    void theWordsSayWhatIsDrawn() {
        ArrestResult r = arrest("bottoms out");
        Picture p = DescentPicture.draw(r, UnitChoice.SI);
        assertThat(p.title()).startsWith("Load, tension and energy against descent: ");
        assertThat(p.description())
                .contains(
                        String.format(java.util.Locale.ROOT, "%.2f kN", r.lineLoad() / 1000),
                        String.format(java.util.Locale.ROOT, "%.3f m", r.lineDescent()),
                        "used up")
                .doesNotContain("bounds on the safe side");
        assertThat(DescentPicture.draw(arrest("two together"), UnitChoice.SI).description())
                .contains("bounds on the safe side");
        Shapes s = Shapes.of(p);
        assertThat(Xml.all(s.document(), "pattern")).as("the load is shaded").hasSize(1);
        assertThat(s.words()).contains("taken by the line", "left for the line", "load P on the line");
    }

    @Test
    void inCustomaryUnitsTheSameCurveIsDrawn() {
        ArrestResult r = arrest("fibre");
        Picture si = DescentPicture.draw(r, UnitChoice.SI);
        Picture us = DescentPicture.draw(r, UnitChoice.US_CUSTOMARY);
        double[] metres = new Columns(si).of("descent of the attachment [m]");
        double[] feet = new Columns(us).of("descent of the attachment [ft]");
        double[] kn = new Columns(si).of("load P on the line [kN]");
        double[] lbf = new Columns(us).of("load P on the line [lbf]");
        for (int i = 0; i < 21; i++) {
            assertThat(feet[i] * 0.3048).isCloseTo(metres[i], within(0.0007));
            assertThat(lbf[i] * 4.448_221_615_260_5).isCloseTo(1000 * kn[i], within(7.3));
        }
    }
}
