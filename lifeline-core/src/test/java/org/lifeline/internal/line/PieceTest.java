package org.lifeline.internal.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
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

    /**
     * A deep piece is steep at its ends and flat where it is lowest, by s = H/w (sinh(u + w x/H) − sinh u) with
     * sinh u = V/H at its start: H. M. Irvine, Cable Structures, MIT Press 1981, ch. 1, for an inextensible cable. Of each
     * piece one place is asked for where it falls steeply, one where it rises steeply and one anywhere.
     */
    @Test
    void theLengthAtARunOfADeepPieceIsThatOfTheCommonCatenary() {
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            double a = r.nextDouble(0.1, 2);
            double u = r.nextDouble(-6, -2.2);
            double end = r.nextDouble(2.2, 6);
            double heading = r.nextDouble(6);
            double weight = 5;
            double h = a * weight;
            Vector3 t = new Vector3(h * Math.cos(heading), h * Math.sin(heading), h * Math.sinh(u));
            Piece p = piece(1e18, t, a * (Math.sinh(end) - Math.sinh(u)), weight);
            double[] slopes = {r.nextDouble(u, -2), r.nextDouble(2, end), r.nextDouble(u, end)};
            for (double slope : slopes) {
                double run = a * (slope - u);
                double expected = a * (Math.sinh(slope) - Math.sinh(u));
                assertThat(p.lengthAtRun(run))
                        .as("seed %d, slope %s", seed, Math.sinh(slope))
                        .isCloseTo(expected, within(1e-11 * p.length()));
            }
        }
    }

    /** A bar goes h/T of its stretched length. */
    @Test
    void theLengthAtARunOfABarIsItsShare() {
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            Vector3 t = new Vector3(r.nextDouble(100, 5000), r.nextDouble(-5000, 5000), r.nextDouble(-5000, 5000));
            double stiffness = r.nextDouble(2e4, 1e6);
            Piece p = piece(stiffness, t, r.nextDouble(0.1, 40), 0);
            double share = r.nextDouble();
            double run = share * p.length() * (1 + t.magnitude() / stiffness) * t.horizontal() / t.magnitude();
            assertThat(p.lengthAtRun(run))
                    .as("seed %d", seed)
                    .isCloseTo(share * p.length(), within(1e-13 * p.length()));
        }
    }

    /**
     * Above a certain tension this rope gives way and is soft: it gains length there faster than it loses slope. It is soft
     * near both ends of these pieces and stiff where they are low; a place of each part is asked for.
     */
    @Test
    void theLengthAtARunIsFoundOnARopeThatGivesWay() {
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            double h = r.nextDouble(500, 1000);
            double yield = h * r.nextDouble(1.1, 3);
            LoadElongation law = LoadElongation.curve(List.of(
                    new LoadElongation.Corner(0, 0),
                    new LoadElongation.Corner(0.01, yield),
                    new LoadElongation.Corner(r.nextDouble(1, 3), 1.2 * yield)));
            double length = r.nextDouble(5, 30);
            double up = h * r.nextDouble(-4, -3);
            double weight = h * r.nextDouble(7, 8) / length;
            Piece p = Piece.of(
                    new ElasticCatenary(law),
                    new Piece.Start(Point.of(1, 2, 3), new Vector3(0.6 * h, 0.8 * h, up)),
                    length,
                    weight,
                    0);
            // Vertical part of the tension at which it gives way: at most 2.83 h, so that it does at both ends.
            double v = Math.sqrt(yield * yield - h * h);
            double stiff = (-v - up) / weight;
            double soft = (v - up) / weight;
            double[] places = {r.nextDouble(0, stiff), r.nextDouble(stiff, soft), r.nextDouble(soft, length)};
            for (double place : places) {
                double run = p.at(place).horizontalDistance(p.start());
                assertThat(p.at(p.lengthAtRun(run)).horizontalDistance(p.start()))
                        .as("seed %d at %s of %s m", seed, place, length)
                        .isCloseTo(run, within(1e-12 * p.length()));
            }
        }
    }

    /** In millimetres as in kilometres: lengths times a factor, weight per length divided by it. */
    @Test
    void theLengthAtARunScalesWithTheLengths() {
        for (double scale : new double[] {1e-4, 1e-2, 1e3}) {
            for (double share : new double[] {0.1, 0.5, 0.8}) {
                Vector3 t = new Vector3(300, 400, -900);
                Piece p = piece(1e6, t, 10, 150);
                Piece scaled = piece(1e6, t, 10 * scale, 150 / scale);
                double run = share * p.start().horizontalDistance(p.end());
                assertThat(scaled.lengthAtRun(run * scale) / scale)
                        .as("scale %s, share %s", scale, share)
                        .isCloseTo(p.lengthAtRun(run), within(1e-11));
            }
        }
    }

    /** In millinewtons as in meganewtons: forces, weight and stiffness times a factor leave the shape. */
    @Test
    void theLengthAtARunDoesNotDependOnTheUnitOfForce() {
        for (double scale : new double[] {1e-6, 1e-3, 1e3}) {
            for (double share : new double[] {0.1, 0.5, 0.8}) {
                Vector3 t = new Vector3(300, 400, -900);
                Piece p = piece(1e6, t, 10, 150);
                Piece scaled = piece(1e6 * scale, t.times(scale), 10, 150 * scale);
                double run = share * p.start().horizontalDistance(p.end());
                assertThat(scaled.lengthAtRun(run))
                        .as("scale %s, share %s", scale, share)
                        .isCloseTo(p.lengthAtRun(run), within(1e-11));
            }
        }
    }

    @Test
    void aRunThatThePieceDoesNotGoIsItsEnd() {
        Piece p = piece(1e6, new Vector3(1000, 0, -100), 10, 5);
        double run = p.start().horizontalDistance(p.end());
        for (double beyond : new double[] {run, run + 1e-9, 2 * run, 1e6}) {
            assertThat(p.lengthAtRun(beyond)).as("run %s", beyond).isCloseTo(10, within(1e-14));
        }
        assertThat(p.lengthAtRun(run - 1e-3)).isLessThan(10 - 0.9e-3);
        assertThat(piece(1e6, new Vector3(0, 0, -1000), 10, 5).lengthAtRun(0.1))
                .as("hangs plumb")
                .isCloseTo(10, within(1e-14));
        for (double none : new double[] {0, 1}) {
            assertThat(piece(1e6, new Vector3(1000, 0, 0), 0, 5).lengthAtRun(none))
                    .as("no piece")
                    .isZero();
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
