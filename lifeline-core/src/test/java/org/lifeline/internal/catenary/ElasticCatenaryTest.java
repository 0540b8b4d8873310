package org.lifeline.internal.catenary;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.lifeline.model.cable.LoadElongation;

/** Properties of a piece of cable that hold whatever the numbers are; seeded. */
class ElasticCatenaryTest {
    private static final int CASES =
            Integer.getInteger("lifeline.cases", Boolean.getBoolean("lifeline.long") ? 20_000 : 2000);

    /** A random piece. */
    private static final class Case {
        final LoadElongation law;
        final double tx;
        final double ty;
        final double tz;
        final double s;
        final double w;
        final double h;
        final String name;

        Case(long seed, boolean bent) {
            SplittableRandom r = new SplittableRandom(seed);
            h = log(r, 1, 1e5);
            double heading = r.nextDouble(2 * Math.PI);
            tx = h * Math.cos(heading);
            ty = h * Math.sin(heading);
            s = log(r, 0.1, 500);
            w = r.nextInt(20) == 0 ? 0 : log(r, 1e-9, 30) * h / s;
            tz = h * Math.tan(Math.toRadians(r.nextDouble(-80, 80))) - r.nextDouble() * w * s;
            double stiffness = log(r, 1e4, 1e9);
            if (bent) {
                double t = Math.sqrt(h * h + tz * tz);
                List<LoadElongation.Corner> corners = new ArrayList<>(List.of(new LoadElongation.Corner(0, 0)));
                double force = 0;
                double strain = 0;
                for (int i = r.nextInt(2, 5); i > 0; i--) {
                    force += t * log(r, 0.1, 2);
                    strain += log(r, 1e-5, 2e-2);
                    corners.add(new LoadElongation.Corner(strain, force));
                }
                law = LoadElongation.curve(corners);
            } else {
                law = LoadElongation.linear(stiffness);
            }
            name = "seed " + seed + (bent ? ", bent law" : "") + ", h " + h + ", tz " + tz + ", s " + s + ", w " + w;
        }

        ElasticCatenary at(double dx, double dy, double dz) {
            ElasticCatenary c = new ElasticCatenary(law);
            c.evaluate(tx + dx, ty + dy, tz + dz, s, w);
            c.energies(tx + dx, ty + dy, tz + dz, s, w);
            return c;
        }
    }

    private static double log(SplittableRandom r, double low, double high) {
        return Math.exp(r.nextDouble(Math.log(low), Math.log(high)));
    }

    private static List<Case> cases() {
        List<Case> list = new ArrayList<>();
        for (long seed = 1; seed <= CASES; seed++) {
            list.add(new Case(seed, seed % 3 == 0));
        }
        return list;
    }

    private static double norm(ElasticCatenary c) {
        return Math.sqrt(c.dx * c.dx + c.dy * c.dy + c.dz * c.dz);
    }

    @Test
    void agreesWithQuadrature() {
        for (Case each : cases()) {
            ElasticCatenary c = each.at(0, 0, 0);
            CatenaryQuadrature q = new CatenaryQuadrature(each.law, each.h, each.tz, each.s, each.w);
            assertThat(Math.hypot(c.dx, c.dy)).as(each.name).isCloseTo(q.run(), within(2e-13 * norm(c)));
            assertThat(c.dz).as(each.name).isCloseTo(q.rise(), within(2e-13 * q.stretchedLength()));
            assertThat(c.strainEnergy).as(each.name).isCloseTo(q.strainEnergy(), within(4e-13 * q.strainEnergy()));
            assertThat(c.complementary).as(each.name).isCloseTo(q.complementary(), within(2e-13 * q.complementary()));
        }
    }

    @Test
    void derivativesByTensionAgreeWithFiniteDifferences() {
        for (Case each : cases()) {
            ElasticCatenary c = each.at(0, 0, 0);
            double t = Math.min(c.startTension, each.h);
            double step = 1e-4 * t;
            double[][] k = {{c.kxx, c.kxy, c.kxz}, {c.kxy, c.kyy, c.kyz}, {c.kxz, c.kyz, c.kzz}};
            double scale = Math.abs(c.kxx) + Math.abs(c.kyy) + Math.abs(c.kzz);
            for (int j = 0; j < 3; j++) {
                ElasticCatenary a = each.at(j == 0 ? -step : 0, j == 1 ? -step : 0, j == 2 ? -step : 0);
                ElasticCatenary b = each.at(j == 0 ? step : 0, j == 1 ? step : 0, j == 2 ? step : 0);
                double[] byDifference = {
                    (b.dx - a.dx) / (2 * step), (b.dy - a.dy) / (2 * step), (b.dz - a.dz) / (2 * step)
                };
                // A corner of the law within the step makes the difference an average of two slopes.
                double allowed = each.law.isLinear() ? 2e-7 * scale : 2e-3 * scale;
                for (int i = 0; i < 3; i++) {
                    assertThat(k[i][j])
                            .as("%s, k[%d][%d]", each.name, i, j)
                            .isCloseTo(byDifference[i], within(allowed));
                }
            }
        }
    }

    @Test
    void theStretchedVectorIsTheGradientOfTheComplementaryEnergy() {
        for (Case each : cases()) {
            ElasticCatenary c = each.at(0, 0, 0);
            double step = 1e-4 * Math.min(c.startTension, each.h);
            double dx = (each.at(step, 0, 0).complementary - each.at(-step, 0, 0).complementary) / (2 * step);
            double dz = (each.at(0, 0, step).complementary - each.at(0, 0, -step).complementary) / (2 * step);
            double rounding = 1e-15 * c.complementary / step;
            double length = norm(c) + each.s;
            assertThat(c.dx).as(each.name).isCloseTo(dx, within(1e-7 * length + rounding));
            assertThat(c.dz).as(each.name).isCloseTo(dz, within(1e-7 * length + rounding));
        }
    }

    @Test
    void derivativeByLengthAgreesWithFiniteDifferences() {
        for (Case each : cases()) {
            ElasticCatenary c = each.at(0, 0, 0);
            double turn = each.w * each.s > each.h ? each.h / each.w : each.s;
            double step = 1e-4 * Math.min(each.s, turn);
            ElasticCatenary a = new ElasticCatenary(each.law);
            ElasticCatenary b = new ElasticCatenary(each.law);
            a.evaluate(each.tx, each.ty, each.tz, each.s - step, each.w);
            b.evaluate(each.tx, each.ty, each.tz, each.s + step, each.w);
            double scale = Math.sqrt(c.ex * c.ex + c.ey * c.ey + c.ez * c.ez);
            double allowed = each.law.isLinear() ? 2e-8 * scale : 1e-4 * scale;
            double rounding = 4e-16 * norm(c) / step;
            assertThat(c.ex).as(each.name).isCloseTo((b.dx - a.dx) / (2 * step), within(allowed + rounding));
            assertThat(c.ey).as(each.name).isCloseTo((b.dy - a.dy) / (2 * step), within(allowed + rounding));
            assertThat(c.ez).as(each.name).isCloseTo((b.dz - a.dz) / (2 * step), within(allowed + rounding));
        }
    }

    @Test
    void aPieceIsTheSumOfItsTwoParts() {
        SplittableRandom r = new SplittableRandom(77);
        for (Case each : cases()) {
            double first = each.s * r.nextDouble(0.01, 0.99);
            ElasticCatenary whole = each.at(0, 0, 0);
            ElasticCatenary a = new ElasticCatenary(each.law);
            a.evaluate(each.tx, each.ty, each.tz, first, each.w);
            a.energies(each.tx, each.ty, each.tz, first, each.w);
            double between = each.tz + each.w * first;
            ElasticCatenary b = new ElasticCatenary(each.law);
            b.evaluate(each.tx, each.ty, between, each.s - first, each.w);
            b.energies(each.tx, each.ty, between, each.s - first, each.w);
            double allowed = 1e-13 * (norm(a) + norm(b));
            assertThat(a.dx + b.dx).as(each.name).isCloseTo(whole.dx, within(allowed));
            assertThat(a.dy + b.dy).as(each.name).isCloseTo(whole.dy, within(allowed));
            assertThat(a.dz + b.dz).as(each.name).isCloseTo(whole.dz, within(allowed));
            assertThat(a.endTension).as(each.name).isCloseTo(b.startTension, within(1e-15 * a.endTension));
            assertThat(a.strainEnergy + b.strainEnergy)
                    .as(each.name)
                    .isCloseTo(whole.strainEnergy, within(1e-13 * whole.strainEnergy));
            assertThat(a.complementary + b.complementary)
                    .as(each.name)
                    .isCloseTo(whole.complementary, within(1e-13 * whole.complementary));
            double scale = whole.kxx + whole.kyy + whole.kzz;
            assertThat(a.kxx + b.kxx).as(each.name).isCloseTo(whole.kxx, within(1e-12 * scale));
            assertThat(a.kxz + b.kxz).as(each.name).isCloseTo(whole.kxz, within(1e-12 * scale));
            assertThat(a.kzz + b.kzz).as(each.name).isCloseTo(whole.kzz, within(1e-12 * scale));
        }
    }

    @Test
    void thePieceSeenFromItsEndIsTheMirrorImage() {
        for (Case each : cases()) {
            ElasticCatenary c = each.at(0, 0, 0);
            ElasticCatenary m = new ElasticCatenary(each.law);
            double from = -(each.tz + each.w * each.s);
            m.evaluate(each.tx, each.ty, from, each.s, each.w);
            m.energies(each.tx, each.ty, from, each.s, each.w);
            double allowed = 2e-13 * (norm(c) + each.s);
            assertThat(m.dx).as(each.name).isCloseTo(c.dx, within(allowed));
            assertThat(m.dy).as(each.name).isCloseTo(c.dy, within(allowed));
            assertThat(m.dz).as(each.name).isCloseTo(-c.dz, within(allowed));
            assertThat(m.startTension).as(each.name).isCloseTo(c.endTension, within(1e-15 * c.endTension));
            assertThat(m.strainEnergy).as(each.name).isCloseTo(c.strainEnergy, within(2e-13 * c.strainEnergy));
            double scale = c.kxx + c.kyy + c.kzz;
            assertThat(m.kxx).as(each.name).isCloseTo(c.kxx, within(1e-12 * scale));
            assertThat(m.kxy).as(each.name).isCloseTo(c.kxy, within(1e-12 * scale));
            assertThat(m.kxz).as(each.name).isCloseTo(-c.kxz, within(1e-12 * scale));
            assertThat(m.kyz).as(each.name).isCloseTo(-c.kyz, within(1e-12 * scale));
            assertThat(m.kzz).as(each.name).isCloseTo(c.kzz, within(1e-12 * scale));
        }
    }

    @Test
    void turnsWithItsTension() {
        for (Case each : cases()) {
            ElasticCatenary c = each.at(0, 0, 0);
            ElasticCatenary r = new ElasticCatenary(each.law);
            r.evaluate(-each.ty, each.tx, each.tz, each.s, each.w);
            double allowed = 1e-14 * (norm(c) + each.s);
            assertThat(r.dx).as(each.name).isCloseTo(-c.dy, within(allowed));
            assertThat(r.dy).as(each.name).isCloseTo(c.dx, within(allowed));
            assertThat(r.dz).as(each.name).isCloseTo(c.dz, within(allowed));
            assertThat(r.ex).as(each.name).isCloseTo(-c.ey, within(1e-14 * Math.abs(c.ey)));
            double scale = c.kxx + c.kyy + c.kzz;
            assertThat(r.kxx).as(each.name).isCloseTo(c.kyy, within(1e-13 * scale));
            assertThat(r.kxy).as(each.name).isCloseTo(-c.kxy, within(1e-13 * scale));
            assertThat(r.kyz).as(each.name).isCloseTo(c.kxz, within(1e-13 * scale));
        }
    }

    @Test
    void theComplianceMatrixIsPositiveDefinite() {
        for (Case each : cases()) {
            ElasticCatenary c = each.at(0, 0, 0);
            double minor = c.kxx * c.kzz - c.kxz * c.kxz;
            double det = c.kxx * (c.kyy * c.kzz - c.kyz * c.kyz)
                    - c.kxy * (c.kxy * c.kzz - c.kyz * c.kxz)
                    + c.kxz * (c.kxy * c.kyz - c.kyy * c.kxz);
            assertThat(c.kxx).as(each.name).isPositive();
            assertThat(minor).as(each.name).isPositive();
            // In a taut stiff piece the smallest eigenvalue, s/EA, drowns in the rounding of the largest, s/T.
            if (c.startTension * each.law.compliance(0) > 1e-9) {
                assertThat(det).as(each.name).isPositive();
            }
        }
    }

    @Test
    void aWeightlessPieceIsAStraightElasticBar() {
        ElasticCatenary c = new ElasticCatenary(LoadElongation.linear(2e6));
        c.evaluate(3000, 4000, 12000, 26, 0);
        double stretched = 26 * (1 + 13000 / 2e6);
        assertThat(c.dx).isCloseTo(stretched * 3 / 13, within(1e-14));
        assertThat(c.dy).isCloseTo(stretched * 4 / 13, within(1e-14));
        assertThat(c.dz).isCloseTo(stretched * 12 / 13, within(1e-14));
        assertThat(c.startTension).isEqualTo(13000);
        assertThat(c.endTension).isEqualTo(13000);
        c.energies(3000, 4000, 12000, 26, 0);
        assertThat(c.strainEnergy).isCloseTo(26 * 13000.0 * 13000 / 2 / 2e6, within(1e-10));
    }

    @Test
    void aPieceOfNoLengthIsAPoint() {
        for (boolean bent : new boolean[] {false, true}) {
            ElasticCatenary c = new ElasticCatenary(
                    bent
                            ? LoadElongation.curve(List.of(
                                    new LoadElongation.Corner(0, 0),
                                    new LoadElongation.Corner(0.01, 500),
                                    new LoadElongation.Corner(0.02, 2000)))
                            : LoadElongation.linear(1e5));
            c.evaluate(300, 0, 400, 0, 5);
            c.energies(300, 0, 400, 0, 5);
            assertThat(new double[] {c.dx, c.dy, c.dz, c.strainEnergy, c.complementary, c.kxx})
                    .containsOnly(0);
            assertThat(c.ex).isCloseTo((1 + (bent ? 0.01 : 500 / 1e5)) * 0.6, within(1e-15));
            assertThat(c.endTension).isEqualTo(500);
        }
    }

    /** Newton's method may try a negative length: the integrals the other way round. */
    @Test
    void aNegativeLengthGoesBack() {
        for (Case each : cases()) {
            double s = -0.3 * each.s;
            ElasticCatenary back = new ElasticCatenary(each.law);
            back.evaluate(each.tx, each.ty, each.tz, s, each.w);
            ElasticCatenary on = new ElasticCatenary(each.law);
            on.evaluate(each.tx, each.ty, each.tz + each.w * s, -s, each.w);
            double allowed = 1e-12 * (norm(on) + Math.abs(s));
            assertThat(back.dx).as(each.name).isCloseTo(-on.dx, within(allowed));
            assertThat(back.dy).as(each.name).isCloseTo(-on.dy, within(allowed));
            assertThat(back.dz).as(each.name).isCloseTo(-on.dz, within(allowed));
            assertThat(back.endTension).as(each.name).isCloseTo(on.startTension, within(1e-14 * on.startTension));
            double scale = on.kxx + on.kyy + on.kzz;
            assertThat(back.kxx).as(each.name).isCloseTo(-on.kxx, within(1e-12 * scale));
            assertThat(back.kxy).as(each.name).isCloseTo(-on.kxy, within(1e-12 * scale));
            assertThat(back.kxz).as(each.name).isCloseTo(-on.kxz, within(1e-12 * scale));
            assertThat(back.kyz).as(each.name).isCloseTo(-on.kyz, within(1e-12 * scale));
            assertThat(back.kyy).as(each.name).isCloseTo(-on.kyy, within(1e-12 * scale));
            assertThat(back.kzz).as(each.name).isCloseTo(-on.kzz, within(1e-12 * scale));
        }
    }

    @Test
    void aCornerThatDoesNotBendChangesNothing() {
        LoadElongation straight = LoadElongation.linear(1e5);
        LoadElongation cut = LoadElongation.curve(List.of(
                new LoadElongation.Corner(0, 0),
                new LoadElongation.Corner(0.004, 400),
                new LoadElongation.Corner(0.0071, 710),
                new LoadElongation.Corner(0.02, 2000)));
        ElasticCatenary a = new ElasticCatenary(straight);
        ElasticCatenary b = new ElasticCatenary(cut);
        a.evaluate(390, 20, -700, 30, 60);
        a.energies(390, 20, -700, 30, 60);
        b.evaluate(390, 20, -700, 30, 60);
        b.energies(390, 20, -700, 30, 60);
        assertThat(new double[] {b.dx, b.dy, b.dz}).containsExactly(new double[] {a.dx, a.dy, a.dz}, within(1e-13));
        assertThat(b.kxx).isCloseTo(a.kxx, within(1e-14));
        assertThat(b.kxy).isCloseTo(a.kxy, within(1e-14));
        assertThat(b.kyz).isCloseTo(a.kyz, within(1e-14));
        assertThat(b.kyy).isCloseTo(a.kyy, within(1e-14));
        assertThat(b.strainEnergy).isCloseTo(a.strainEnergy, within(1e-12));
        assertThat(b.complementary).isCloseTo(a.complementary, within(1e-9));
    }
}
