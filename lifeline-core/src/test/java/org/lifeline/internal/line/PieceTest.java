package org.lifeline.internal.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Point;
import org.lifeline.base.Vector3;
import org.lifeline.internal.catenary.ElasticCatenary;
import org.lifeline.model.cable.LoadElongation;

/** A piece of cable against the common catenary of textbooks, the straight bar, and itself read backwards. */
class PieceTest {
    private static final int CASES = Integer.getInteger("lifeline.cases", 500);

    private static Piece piece(double stiffness, Vector3 tension, double length, double weight) {
        ElasticCatenary c = new ElasticCatenary(LoadElongation.linear(stiffness));
        return Piece.of(c, new Piece.Start(Point.of(1, 2, 3), tension), length, weight, 0);
    }

    private static Piece random(SplittableRandom r) {
        double h = Math.exp(r.nextDouble(Math.log(50), Math.log(50_000)));
        double heading = r.nextDouble(6);
        double length = r.nextDouble(0.1, 50);
        double weight = r.nextDouble(0, 2 * h / length);
        Vector3 t = new Vector3(h * Math.cos(heading), h * Math.sin(heading), h * r.nextDouble(-2, 2));
        return piece(r.nextDouble(1e5, 1e8), t, length, weight);
    }

    /**
     * From its lowest point an inextensible cable runs along z = a (cosh x/a − 1) with s = a sinh x/a, a = H/w: H. M.
     * Irvine, Cable Structures, MIT Press 1981, ch. 1.
     */
    @Test
    void aStiffCableIsTheCommonCatenary() {
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            double a = r.nextDouble(2, 50);
            double x = a * r.nextDouble(0.01, 1.5);
            double weight = 5;
            // Stiff enough that the stretch is rounding.
            Piece p = piece(1e18, new Vector3(a * weight, 0, 0), a * Math.sinh(x / a), weight);
            Vector3 end = p.end().minus(p.start());
            assertThat(end.x()).as("seed %d", seed).isCloseTo(x, within(1e-12 * a));
            assertThat(end.y()).as("seed %d", seed).isZero();
            assertThat(end.z()).as("seed %d", seed).isCloseTo(a * (Math.cosh(x / a) - 1), within(1e-11 * a));
            assertThat(p.endTension().magnitude())
                    .as("T = w (a + z), seed %d", seed)
                    .isCloseTo(weight * (a + end.z()), within(1e-10 * a * weight));
        }
    }

    /** Without weight it is a bar: straight, longer by T/EA. */
    @Test
    void aCableWithoutWeightIsAStraightBar() {
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            Vector3 t = new Vector3(r.nextDouble(100, 5000), r.nextDouble(-5000, 5000), r.nextDouble(-5000, 5000));
            double stiffness = r.nextDouble(1e5, 1e7);
            double length = r.nextDouble(0.1, 40);
            Piece p = piece(stiffness, t, length, 0);
            Vector3 along = t.times(length * (1 + t.magnitude() / stiffness) / t.magnitude());
            assertThat(p.end().minus(p.start()).minus(along).magnitude())
                    .as("seed %d", seed)
                    .isLessThan(1e-12 * length);
            assertThat(p.endTension()).as("seed %d", seed).isEqualTo(t);
            Vector3 half = p.at(0.5 * length).minus(p.start());
            assertThat(half.minus(along.times(0.5)).magnitude())
                    .as("seed %d", seed)
                    .isLessThan(1e-12 * length);
        }
    }

    @Test
    void theWeightIsTheDifferenceOfTheTensions() {
        for (long seed = 1; seed <= CASES; seed++) {
            Piece p = random(new SplittableRandom(seed));
            Vector3 gained = p.endTension().minus(p.startTension());
            assertThat(gained.horizontal()).as("seed %d", seed).isZero();
            assertThat(gained.z())
                    .as("seed %d", seed)
                    .isCloseTo(
                            p.weight() * p.length(),
                            within(1e-12 * p.endTension().magnitude()));
        }
    }

    /** Cut anywhere, the second part starts with the tension that the first ends with, and both end where the whole does. */
    @Test
    void twoPartsAreTheWhole() {
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            Piece p = random(r);
            ElasticCatenary c = new ElasticCatenary(p.law());
            double cut = p.length() * r.nextDouble();
            Piece a = Piece.of(c, p.begin(), cut, p.weight(), 0);
            Piece b = Piece.of(c, new Piece.Start(a.end(), a.endTension()), p.length() - cut, p.weight(), 0);
            assertThat(b.end().distance(p.end())).as("seed %d", seed).isLessThan(1e-11 * p.length());
            assertThat(p.at(cut).distance(a.end())).as("seed %d", seed).isLessThan(1e-11 * p.length());
        }
    }

    /** Read from its end, with the tension turned round, it comes back to its start. */
    @Test
    void backwardsItIsTheSamePiece() {
        for (long seed = 1; seed <= CASES; seed++) {
            Piece p = random(new SplittableRandom(seed));
            Piece back = Piece.of(
                    new ElasticCatenary(p.law()),
                    new Piece.Start(p.end(), p.endTension().times(-1)),
                    p.length(),
                    p.weight(),
                    0);
            assertThat(back.end().distance(p.start())).as("seed %d", seed).isLessThan(1e-11 * p.length());
        }
    }

    @Test
    void theLengthAtARunIsWhereThePieceHasGoneIt() {
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            Piece p = random(r);
            double run = p.start().horizontalDistance(p.end()) * r.nextDouble();
            double s = p.lengthAtRun(run);
            assertThat(s).as("seed %d", seed).isBetween(0.0, p.length());
            assertThat(p.at(s).horizontalDistance(p.start()))
                    .as("seed %d", seed)
                    .isCloseTo(run, within(1e-11 * p.length()));
        }
    }

    @Test
    void aRunOfNothingIsTheStart() {
        Piece p = piece(1e6, new Vector3(1000, 0, -100), 10, 5);
        assertThat(p.lengthAtRun(0)).isCloseTo(0, within(1e-12));
        assertThat(p.at(0)).isEqualTo(p.start());
        assertThat(p.at(p.length()).distance(p.end())).isLessThan(1e-13);
    }
}
