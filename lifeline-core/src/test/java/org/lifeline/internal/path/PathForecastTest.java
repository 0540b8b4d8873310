package org.lifeline.internal.path;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Objects;
import java.util.SplittableRandom;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.base.Point;
import org.lifeline.internal.line.Equilibrium;
import org.lifeline.model.Attachment;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;

/** Where the lowest point of a fall is foreseen on a long line that runs freely, and that nothing which is found depends on it. */
class PathForecastTest {
    private static final double WEIGHT = 981;

    /** Spans of all lengths, up and down, as the seed says. */
    private static Lifeline line(long seed, int spans, Stiffness ends) {
        SplittableRandom r = new SplittableRandom(seed);
        Lifeline.Builder b = Lifeline.builder()
                .cable(Cable.builder()
                        .weightPerLength(r.nextDouble(2, 8))
                        .axialStiffness(r.nextDouble(2e6, 8e6))
                        .build())
                .pretension(r.nextDouble(800, 5000));
        double x = 0;
        double z = 10;
        b.support(Support.end("a", Point.of(0, 0, z)).withStiffness(ends));
        for (int i = 1; i <= spans; i++) {
            x += r.nextDouble(5, 15);
            z += r.nextDouble(-0.4, 0.4);
            Point at = Point.of(x, 0, z);
            if (i < spans) {
                b.intermediateAnchor("p" + i, at, Passage.free());
            } else {
                b.support(Support.end("b", at).withStiffness(ends));
            }
        }
        return b.build();
    }

    /** A path of a load that grips a span somewhere in the line. */
    private static final class Follower {
        private final EquilibriumPath path;
        private final @Nullable PathForecast forecast;

        Follower(Lifeline line, int span) {
            LineModel model = new LineModel(line);
            LineModel.Load load = model.hook(span, 0.4 * line.run(span + 1), true);
            new LoadPlacement(model).activate(load);
            PathEnergy.Datum datum = new PathEnergy.Datum(10, model.energy().line());
            path = new EquilibriumPath(
                    model,
                    new PathParameter.Weight(load.index()),
                    new EquilibriumPath.Scale(datum, 3000, PathTolerances.OF_WHAT_COMES));
            forecast = PathForecast.of(path, new Equilibrium(model.system(), model.work()));
        }

        double end(PathPoint now, double target, EquilibriumPath.End end, double watchFrom) {
            return Objects.requireNonNull(forecast).end(now, target, end, watchFrom);
        }

        /** Energy of a fall from a height that the line has not taken up. */
        EquilibriumPath.End fall(double height) {
            double from = path.now().descent;
            return new EquilibriumPath.End() {
                @Override
                public double value(PathPoint point) {
                    return WEIGHT * (height + point.descent - from) - PathEnergy.taken(point);
                }

                @Override
                public double slope(PathPoint point) {
                    return (WEIGHT - point.value) * point.descentRate;
                }
            };
        }
    }

    /** Parabolas for catenaries, one tension for a side, sixteen chords: three parts in a thousand over all that the seeds draw. */
    @Test
    void isNearTheEnd() {
        for (long seed = 1; seed <= 40; seed++) {
            int spans = 40 + (int) (seed % 5) * 20;
            Follower f = new Follower(line(seed, spans, Stiffness.rigid()), (int) (7 * seed % spans));
            EquilibriumPath.End end = f.fall(1 + 0.05 * seed);
            double foreseen = f.end(f.path.now(), 12_000, end, WEIGHT);
            assertThat(f.path.advance(12_000, end, WEIGHT)).as("seed %d", seed).isTrue();
            assertThat(foreseen / f.path.now().value).as("seed %d", seed).isCloseTo(1, within(3e-3));
        }
    }

    /** Ends that yield by a nanometre are served otherwise, and change the forces by no more than that. */
    @ParameterizedTest
    @ValueSource(ints = {40, 90})
    void whatIsFoundDoesNotDependOnIt(int spans) {
        for (Connection connection : new Connection[] {
            Connection.plainLanyard(1.8, LoadingCurve.spring(6e4)),
            Connection.lanyard(
                    1.8,
                    Connection.PersonalAbsorber.builder()
                            .clearanceForce(3200)
                            .maximumForce(6000)
                            .maximumExtension(1.2)
                            .initialStiffness(1e5)
                            .stopStiffness(2e5)
                            .build())
        }) {
            for (long seed = 1; seed <= 10; seed++) {
                Lifeline line = line(seed, spans, Stiffness.rigid());
                double lowest = line.supports().get(spans / 3).position().z();
                Worker worker = Worker.builder("A")
                        .mass(100)
                        .walkingLevel(lowest - 1.5)
                        .attachment(Attachment.GRIPPED)
                        .connection(connection)
                        .build();
                Fall fall = Fall.builder("fall")
                        .at(Place.of(spans / 3, 3))
                        .faller(worker)
                        .build();
                ArrestResult a = EnergyBalance.withDefaults().solve(line, fall);
                ArrestResult b = EnergyBalance.withDefaults().solve(line(seed, spans, Stiffness.alongX(1e13)), fall);
                String name = "seed " + seed;
                assertThat(a.lineLoad()).as(name).isCloseTo(b.lineLoad(), within(1e-8 * b.lineLoad()));
                assertThat(a.maximumTension())
                        .as(name)
                        .isCloseTo(b.maximumTension(), within(1e-8 * b.maximumTension()));
                assertThat(a.sag()).as(name).isCloseTo(b.sag(), within(1e-8 * b.sag()));
                assertThat(a.energy().residual())
                        .as(name)
                        .isCloseTo(0, within(1e-10 * a.energy().fall()));
            }
        }
    }

    /** A force that the line carries with energy to spare, and one below which nothing is looked for. */
    @Test
    void foreseesNoEndWhereThereIsNone() {
        Follower f = new Follower(line(3, 50, Stiffness.rigid()), 20);
        EquilibriumPath.End end = f.fall(2);
        double foreseen = f.end(f.path.now(), 12_000, end, WEIGHT);
        assertThat(f.end(f.path.now(), 0.98 * foreseen, end, WEIGHT)).isNaN();
        assertThat(f.end(f.path.now(), 12_000, end, 1.5 * foreseen)).isGreaterThanOrEqualTo(1.5 * foreseen);
        f.path.advance(0.9 * foreseen, null, 0);
        assertThat(f.end(f.path.now(), 12_000, end, WEIGHT))
                .as("from further on")
                .isCloseTo(foreseen, within(1e-3 * foreseen));
    }

    /** An end that is passed at first too, below the force from which it is watched: that does not count. */
    @Test
    void passesWhatLiesBelowTheWatchedForce() {
        Follower f = new Follower(line(3, 50, Stiffness.rigid()), 20);
        EquilibriumPath.End end = Ends.of(q -> q.value < 2000 ? -1 : 7000 - q.value);
        assertThat(f.end(f.path.now(), 12_000, end, 3000)).isCloseTo(7000, within(1e-6));
        assertThat(f.end(f.path.now(), 12_000, Ends.of(q -> 7000 - q.value), 3000))
                .isCloseTo(7000, within(1e-6));
    }

    /** Where the end lies before the first place that is looked at, that place is as near as it can be told. */
    @Test
    void whatIsPassedAtOnceIsForeseenAtTheFirstPlace() {
        Follower f = new Follower(line(3, 50, Stiffness.rigid()), 20);
        PathCoordinate c = f.path.coordinate();
        double first = c.value(c.w(12_000) / 16);
        assertThat(f.end(f.path.now(), 12_000, Ends.of(q -> -1), 0)).isCloseTo(first, within(1e-9 * first));
        assertThat(f.end(f.path.now(), 12_000, Ends.of(q -> -1), 2 * first)).isBetween(2 * first, 8 * first);
    }

    /** A root of the force itself is found by the chord at once: the sixteen places are looked at, and three of them within. */
    @Test
    void asksForTheEndAsOftenAsItSays() {
        Follower f = new Follower(line(3, 50, Stiffness.rigid()), 20);
        int[] asked = {0};
        EquilibriumPath.End end = Ends.of(q -> {
            asked[0]++;
            return 11_999 - q.value;
        });
        assertThat(f.end(f.path.now(), 12_000, end, 0)).isCloseTo(11_999, within(1e-6));
        assertThat(asked[0]).isEqualTo(16 + 3);
        asked[0] = 0;
        assertThat(f.end(f.path.now(), 11_000, end, 0)).isNaN();
        assertThat(asked[0]).isEqualTo(16);
    }

    /** No force is foreseen from a point, or up to one, at which two unknowns find nothing. */
    @Test
    void foreseesNothingWhereNothingIsFound() {
        Follower f = new Follower(line(3, 50, Stiffness.rigid()), 20);
        PathPoint nowhere = new PathPoint(f.path.equilibrium().system, false);
        nowhere.set(f.path.now());
        nowhere.value = Double.NaN;
        assertThat(f.end(nowhere, 12_000, Ends.of(q -> -1), 0)).isNaN();
        assertThat(f.end(f.path.now(), Double.POSITIVE_INFINITY, Ends.of(q -> -1), 0))
                .isNaN();
        assertThat(f.end(f.path.now(), 12_000, Ends.of(q -> q.value < 5000 ? 1 : Double.NaN), 0))
                .as("an end that cannot be told")
                .isNaN();
    }

    /** The forecast spares equilibria of the whole line: at its end there have been no more than four steps. */
    @Test
    void sparesEquilibriaOfTheWholeLine() {
        for (long seed = 1; seed <= 10; seed++) {
            Follower f = new Follower(line(seed, 60, Stiffness.rigid()), 20);
            assertThat(f.path.advance(12_000, f.fall(1.5), WEIGHT)).isTrue();
            assertThat(f.path.tried()).as("seed %d", seed).isBetween(2, 4);
        }
    }

    @Test
    void servesNoShortLine() {
        Follower f = new Follower(line(3, PathTolerances.MANY_SPANS - 1, Stiffness.rigid()), 20);
        assertThat(f.forecast).isNull();
        assertThat(new Follower(line(3, PathTolerances.MANY_SPANS, Stiffness.rigid()), 20).forecast)
                .isNotNull();
        assertThat(new Follower(line(3, PathTolerances.MANY_SPANS, Stiffness.alongX(1e6)), 20).forecast)
                .as("ends that yield")
                .isNull();
    }
}
