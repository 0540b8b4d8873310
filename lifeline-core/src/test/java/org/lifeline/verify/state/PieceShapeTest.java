package org.lifeline.verify.state;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Point;
import org.lifeline.base.Vector3;
import org.lifeline.model.cable.LoadElongation;

/** The quadrature against closed forms and published cables. */
class PieceShapeTest {
    private static final Quadrature RULE = new Quadrature(12, 1e-13);
    private static final double RIGID = 1e30;

    private static PieceShape shape(
            double horizontal, double vertical, double length, double weight, double stiffness) {
        Vector3 start = new Vector3(0.6 * horizontal, 0.8 * horizontal, vertical);
        Vector3 end = start.plus(new Vector3(0, 0, weight * length));
        PieceNumbers p = new PieceNumbers(Point.of(1, 2, 3), Point.of(0, 0, 0), start, end, length, weight, 0);
        return new PieceShape(p, new ElongationTable(LoadElongation.linear(stiffness)), RULE);
    }

    private static double asinh(double x) {
        return Math.copySign(Math.log(Math.abs(x) + Math.hypot(1, x)), x);
    }

    /** Irvine, Cable Structures, MIT Press 1981, ch. 1: the elastic catenary in closed form. */
    @Test
    void elasticCatenary() {
        double h = 1200;
        double v = -900;
        double s = 40;
        double w = 46;
        double ea = 2e5;
        PieceShape piece = shape(h, v, s, w, ea);
        double t0 = Math.hypot(h, v);
        double t1 = Math.hypot(h, v + w * s);

        assertThat(piece.run(s)).isCloseTo(h * s / ea + h / w * (asinh((v + w * s) / h) - asinh(v / h)), within(1e-11));
        assertThat(piece.rise(s)).isCloseTo((v * s + w * s * s / 2) / ea + (t1 - t0) / w, within(1e-11));
        Vector3 span = piece.span();
        assertThat(span.x()).isCloseTo(0.6 * piece.run(s), within(1e-11));
        assertThat(span.y()).isCloseTo(0.8 * piece.run(s), within(1e-11));
        assertThat(span.z()).isEqualTo(piece.rise(s), within(1e-11));
    }

    /**
     * G. Tibert, KTH TRITA-BKN Bull. 46 (1999), after Michalos and Birnstiel 1962 (see the reference data): the level cable
     * of 304.8 m hangs 100 ft at H = 17.79547 kN; lengths 412.8837 + 613.0422 ft, w 46.12 N/m, EA 131 GPa · 548.39 mm².
     * The tolerance is that of the seven digits given.
     */
    @Test
    void levelCableOfMichalosAndBirnstiel() {
        double length = (412.8837 + 613.0422) * 0.3048;
        PieceShape piece = shape(17795.47, -46.12 * length / 2, length, 46.12, 131e9 * 548.39e-6);

        assertThat(piece.run(length)).isCloseTo(304.8, within(2e-3));
        assertThat(-piece.rise(length / 2)).isCloseTo(30.48, within(1e-2));
    }

    /** "Cables: Catenaries", ex. 1 (published): 140 m over 120 m at 3 kg/m, g 9.81: sag 31.70 m, largest tension 2740 N. */
    @Test
    void inextensibleCatenary() {
        double w = 3 * 9.81;
        double h = Math.sqrt(2741.192 * 2741.192 - 70 * w * 70 * w);
        PieceShape piece = shape(h, -70 * w, 140, w, RIGID);

        assertThat(piece.run(140)).isCloseTo(120, within(1e-3));
        assertThat(-piece.rise(70)).isCloseTo(31.70, within(5e-3));
    }

    @Test
    void aSlackCableThatNearlyHangsDown() {
        double h = 1e-7;
        double w = 5;
        PieceShape piece = shape(h, -20, 8, w, RIGID);

        assertThat(piece.run(8)).isCloseTo(2 * h / w * asinh(20 / h), within(1e-18));
        assertThat(piece.rise(4)).isCloseTo(-4, within(1e-6));
        assertThat(piece.rise(8)).isCloseTo(0, within(1e-12));
    }

    @Test
    void aWeightlessCableIsAStraightBar() {
        PieceShape piece = shape(3000, 4000, 10, 0, 1e6);

        assertThat(piece.run(10)).isCloseTo(10 * 0.6 * 1.005, within(1e-13));
        assertThat(piece.rise(10)).isCloseTo(10 * 0.8 * 1.005, within(1e-13));
        assertThat(piece.strainEnergy()).isCloseTo(10 * 5000.0 * 5000 / 2e6, within(1e-10));
        assertThat(piece.weightEnergy(0)).isZero();
    }

    @Test
    void theLengthAtARunIsFoundAgain() {
        PieceShape piece = shape(500, -400, 12, 30, 1e5);

        for (double s : new double[] {0.1, 3, 7, 11.9}) {
            assertThat(piece.lengthAtRun(piece.run(s))).isCloseTo(s, within(1e-13));
        }
    }

    /** ∫(H² + V²)/2EA ds, and w∫z ds by summing over many small steps. */
    @Test
    void energies() {
        double h = 800;
        double v = -300;
        double s = 20;
        double w = 25;
        double ea = 5e4;
        PieceShape piece = shape(h, v, s, w, ea);
        double cubes = Math.pow(v + w * s, 3) - Math.pow(v, 3);

        assertThat(piece.strainEnergy()).isCloseTo((h * h * s + cubes / (3 * w)) / (2 * ea), within(1e-10));
        double sum = 0;
        int steps = 2000;
        for (int i = 0; i < steps; i++) {
            sum += w * s / steps * (3 - 1 + piece.rise(s * (i + 0.5) / steps));
        }
        assertThat(piece.weightEnergy(1)).isCloseTo(sum, within(1e-6 * Math.abs(sum)));
    }

    /** A rope with a corner in its law: the integral is split where the tension passes it. */
    @Test
    void cornersOfTheLaw() {
        LoadElongation law = LoadElongation.curve(List.of(
                new LoadElongation.Corner(0, 0),
                new LoadElongation.Corner(0.01, 850),
                new LoadElongation.Corner(0.05, 1500)));
        Vector3 start = new Vector3(800, 0, -600);
        PieceNumbers p =
                new PieceNumbers(Point.of(0, 0, 0), Point.of(0, 0, 0), start, new Vector3(800, 0, 600), 40, 30, 0);
        PieceShape piece = new PieceShape(p, new ElongationTable(law), RULE);
        double fine = 0;
        int steps = 200_000;
        for (int i = 0; i < steps; i++) {
            double t = Math.hypot(800, -600 + 30 * 40 * (i + 0.5) / steps);
            fine += 40.0 / steps * (1 + law.strain(t)) * 800 / t;
        }

        assertThat(piece.run(40)).isCloseTo(fine, within(1e-8));
    }
}
