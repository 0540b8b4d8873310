package org.lifeline.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.state.SupportReaction;
import org.lifeline.base.Point;
import org.lifeline.base.Vector3;
import org.lifeline.model.Installed;
import org.lifeline.model.PlausibleLine;

/**
 * What must not change: a line seen from its other end, turned in plan, moved, mirrored in a vertical plane; and what
 * must scale: all lengths by one factor, all forces by another.
 */
class LineSymmetryTest {
    private static final int CASES = Boolean.getBoolean("lifeline.long") ? 2000 : 120;

    /** How much two solutions of one arrest may differ: the friction path is followed to 1e-7 of the fall. */
    private static double tolerance(PlausibleLine p) {
        return p.friction.stream().anyMatch(mu -> mu > 0 && mu < 1) ? 2e-6 : 1e-8;
    }

    private static void same(PlausibleLine p, ArrestResult a, ArrestResult b, double length, double force) {
        double t = tolerance(p);
        assertThat(b.arrestForce()).as(p + ": force").isCloseTo(force * a.arrestForce(), rel(t, force * a.lineLoad()));
        assertThat(b.lineLoad()).as(p + ": load").isCloseTo(force * a.lineLoad(), rel(t, force * a.lineLoad()));
        assertThat(b.maximumTension())
                .as(p + ": tension")
                .isCloseTo(force * a.maximumTension(), rel(t, force * a.maximumTension()));
        double scale = length * a.totalFallDistance();
        assertThat(b.freeFall()).as(p + ": free fall").isCloseTo(length * a.freeFall(), rel(1e-12, scale));
        assertThat(b.deployment()).as(p + ": deployment").isCloseTo(length * a.deployment(), rel(t, scale));
        assertThat(b.lineDescent()).as(p + ": descent").isCloseTo(length * a.lineDescent(), rel(t, scale));
        assertThat(b.sag()).as(p + ": sag").isCloseTo(length * a.sag(), rel(t, scale));
        assertThat(b.bottomedOut()).as(p + ": bottomed out").isEqualTo(a.bottomedOut());
        double energy = length * force * a.energy().fall();
        assertThat(b.energy().fall()).as(p + ": energy").isCloseTo(energy, rel(t, energy));
        assertThat(b.energy().friction())
                .as(p + ": heat")
                .isCloseTo(length * force * a.energy().friction(), rel(10 * t, energy));
        assertThat(b.energy().anchors())
                .as(p + ": springs")
                .isCloseTo(length * force * a.energy().anchors(), rel(10 * t, energy));
        assertThat(b.energy().inlineAbsorbers())
                .as(p + ": absorbers")
                .isCloseTo(length * force * a.energy().inlineAbsorbers(), rel(10 * t, energy));
    }

    private static org.assertj.core.data.Offset<Double> rel(double share, double of) {
        return within(share * Math.abs(of));
    }

    @Test
    void seenFromTheOtherEnd() {
        for (long seed = 1; seed <= CASES; seed++) {
            PlausibleLine p = new PlausibleLine(seed, true);
            int spans = p.points.size() - 1;
            // Stated in a way that does not name an end: the horizontal tension in the span of the fall.
            p.installed = Installed.horizontalTension(p.pretension).inSpan(p.span);
            ArrestResult a = Arrests.solve(p);
            PlausibleLine q = new PlausibleLine(seed, true);
            q.installed = Installed.horizontalTension(p.pretension).inSpan(spans + 1 - p.span);
            Collections.reverse(q.points);
            Collections.reverse(q.friction);
            q.inline[0] = p.inline[1];
            q.inline[1] = p.inline[0];
            q.span = spans + 1 - p.span;
            q.station = 1 - p.station;
            ArrestResult b = Arrests.solve(q);
            same(p, a, b, 1, 1);
            double run = p.line().run(p.span);
            if (p.endStiffness > 1e12 && p.postStiffness > 1e12) {
                assertThat(b.loadX()).as(p + ": place").isCloseTo(run - a.loadX(), rel(50 * tolerance(p), run));
            }
            for (int i = 0; i <= spans; i++) {
                SupportReaction x = a.supports().get(i);
                SupportReaction y = b.supports().get(spans - i);
                compare(p, x.vector(), y.vector(), a.maximumTension());
                assertThat(b.slip(spans - i)).as(p + ": slip").isCloseTo(a.slip(i), within(1e-5 * run));
            }
            Arrests.balances(p + ": before", a.before());
            Arrests.balances(p + ": peak", a.peak());
            Arrests.closes(p.toString(), a);
        }
    }

    private static void compare(PlausibleLine p, Vector3 x, Vector3 y, double scale) {
        assertThat(x.minus(y).magnitude()).as(p + ": reaction").isLessThan(20 * tolerance(p) * scale);
    }

    @Test
    void turnedInPlanAndMoved() {
        for (long seed = 1; seed <= CASES; seed++) {
            PlausibleLine p = new PlausibleLine(seed, true);
            ArrestResult a = Arrests.solve(p);
            double angle = new SplittableRandom(seed).nextDouble(0.1, 6);
            double c = Math.cos(angle);
            double s = Math.sin(angle);
            PlausibleLine q = new PlausibleLine(seed, true);
            q.points.replaceAll(
                    at -> Point.of(c * at.x() - s * at.y() + 311, s * at.x() + c * at.y() - 47, at.z() + 5));
            ArrestResult b = Arrests.solve(q);
            same(p, a, b, 1, 1);
            for (int i = 0; i < a.supports().size(); i++) {
                Vector3 v = a.supports().get(i).vector();
                Vector3 turned = new Vector3(c * v.x() - s * v.y(), s * v.x() + c * v.y(), v.z());
                compare(p, turned, b.supports().get(i).vector(), a.maximumTension());
            }
        }
    }

    @Test
    void mirroredInPlan() {
        for (long seed = 1; seed <= CASES / 2; seed++) {
            PlausibleLine p = new PlausibleLine(seed, true);
            ArrestResult a = Arrests.solve(p);
            PlausibleLine q = new PlausibleLine(seed, true);
            q.points.replaceAll(at -> Point.of(at.x(), -at.y(), at.z()));
            ArrestResult b = Arrests.solve(q);
            same(p, a, b, 1, 1);
            for (int i = 0; i < a.supports().size(); i++) {
                Vector3 v = a.supports().get(i).vector();
                compare(
                        p,
                        new Vector3(v.x(), -v.y(), v.z()),
                        b.supports().get(i).vector(),
                        a.maximumTension());
            }
        }
    }

    /**
     * With lengths times λ and forces times φ every equation keeps its form if EA goes by φ, weight per length and
     * stiffness by φ/λ, masses by φ (gravity held): all terms of equilibrium go by φ, of fit by λ, of energy by φλ;
     * strains, angles and friction have no unit.
     *
     * <p>Steps of the friction path are measured against the energy of the fall and one metre more, so that a fall without
     * free fall has a measure: lines much smaller than those on sites are followed less closely.
     */
    @Test
    void scaled() {
        for (double[] factor : new double[][] {{1.7, 3.1}, {0.3, 0.2}, {30, 50}}) {
            double length = factor[0];
            double force = factor[1];
            for (long seed = 1; seed <= CASES / 3; seed++) {
                PlausibleLine p = new PlausibleLine(seed, true);
                ArrestResult a = Arrests.solve(p);
                PlausibleLine q = scale(p, length, force);
                ArrestResult b = EnergyBalance.withDefaults()
                        .withClearance(org.lifeline.model.ClearanceRules.commonPractice()
                                .withHarnessStretch(0.3 * length))
                        .solve(q.line(), q.fall());
                same(p, a, b, length, force);
                for (int i = 0; i < a.supports().size(); i++) {
                    compare(
                            p,
                            a.supports().get(i).vector(),
                            b.supports().get(i).vector().times(1 / force),
                            a.maximumTension());
                }
            }
        }
    }

    private static PlausibleLine scale(PlausibleLine p, double length, double force) {
        PlausibleLine q = new PlausibleLine(p.seed, true);
        List<Point> scaled = new ArrayList<>();
        for (Point at : p.points) {
            scaled.add(Point.of(length * at.x(), length * at.y(), length * at.z()));
        }
        q.points.clear();
        q.points.addAll(scaled);
        q.axialStiffness *= force;
        q.massPerLength *= force / length;
        q.pretension *= force;
        q.endStiffness *= force / length;
        q.postStiffness *= force / length;
        q.inline[0] *= force;
        q.inline[1] *= force;
        q.inlineExtension *= length;
        q.inlineStiffness *= force / length;
        q.inlineStop *= force / length;
        q.mass *= force;
        q.freeFall *= length;
        q.deploymentForce *= force;
        q.initialStiffness *= force / length;
        q.maximumExtension *= length;
        q.stopStiffness *= force / length;
        return q;
    }
}
