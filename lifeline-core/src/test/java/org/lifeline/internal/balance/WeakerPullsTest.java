package org.lifeline.internal.balance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.DoubleFunction;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Point;
import org.lifeline.internal.balance.UnequalFallers.Bound;
import org.lifeline.internal.balance.UnequalFallers.Faller;
import org.lifeline.internal.path.LineModel;
import org.lifeline.internal.path.LoadPath;
import org.lifeline.model.InlineAbsorber;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Support;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;

/** On a line that gives way at some force the largest pull of the others is not what is worst for one who falls with them. */
class WeakerPullsTest {
    private static final int CASES = Integer.getInteger("lifeline.cases", 30);

    /** A faller alone takes 3 kN and half of each newton that others pull, until the line gives way at 6 kN in all. */
    private static Bound onAPlateau(double pull) {
        double force = Math.min(3000 + 0.5 * pull, 6000 - pull);
        return new Bound(force, force / 1e4);
    }

    private static Bound worst(double largest, DoubleFunction<Bound> under) {
        return new WeakerPulls(largest, under).worst(under.apply(0), under.apply(largest));
    }

    /** By hand: 3000 + P/2 = 6000 − P at P = 2000 N, where the faller takes 4000 N. */
    @Test
    void thePullThatJustBringsTheLineToItsPlateauIsTheWorst() {
        for (double largest : new double[] {2010, 2100, 3000, 4700, 5500}) {
            Bound worst = worst(largest, WeakerPullsTest::onAPlateau);
            assertThat(worst.force()).isCloseTo(4000, within(1.0));
            assertThat(worst.extension()).isCloseTo(0.4, within(1e-4));
        }
    }

    @Test
    void belowThePlateauTheLargestPullIsTheWorst() {
        List<Double> asked = new ArrayList<>();
        Bound worst = worst(1900, pull -> {
            asked.add(pull);
            return onAPlateau(pull);
        });
        assertThat(worst).isEqualTo(onAPlateau(1900));
        // None, the largest, and what tells that nothing falls off between.
        assertThat(asked).hasSize(BalanceTolerances.PULLS + 2);
    }

    /** With a pull that exhausts the plateau the force rises again: the larger of both tops counts. */
    @Test
    void behindThePlateauTheForceMayRiseAboveIt() {
        DoubleFunction<Bound> under = pull -> {
            double force = Math.max(onAPlateau(pull).force(), 2 * pull - 4000);
            return new Bound(force, force / 1e4);
        };
        assertThat(worst(3900, under).force()).isCloseTo(4000, within(1.0));
        assertThat(worst(4500, under).force()).isEqualTo(5000);
    }

    /** On a plateau of the absorber the force says nothing and the extension counts; at a rigid stop it is the other way. */
    @Test
    void forceAndExtensionAreEachAtTheirWorst() {
        Bound plateau = worst(4700, pull -> new Bound(4000, onAPlateau(pull).extension()));
        assertThat(plateau.force()).isEqualTo(4000);
        assertThat(plateau.extension()).isCloseTo(0.4, within(1e-4));
        Bound stop = worst(4700, pull -> new Bound(onAPlateau(pull).force(), 0.7));
        assertThat(stop.force()).isCloseTo(4000, within(1.0));
        assertThat(stop.extension()).isEqualTo(0.7);
    }

    private static LoadPath path(Lifeline line, double station) {
        LineModel model = new LineModel(line);
        LineModel.Load load = model.hook(0, station, true);
        return new LoadPath(model, load, model.pointAtStation(0, station).z(), 2000);
    }

    private static LoadingCurve plateau(double force, double extension, double start, double stop) {
        return LoadingCurve.through(
                List.of(new LoadingCurve.Corner(0, force), new LoadingCurve.Corner(extension, force)), start, stop);
    }

    private static Lifeline line(SplittableRandom r) {
        return Lifeline.builder()
                .cable(Cable.builder()
                        .weightPerLength(4.2)
                        .axialStiffness(4.9e6)
                        .build())
                .support(Support.end("a", Point.of(0, 0, 6))
                        .withInlineAbsorber(InlineAbsorber.of(plateau(
                                r.nextDouble(3000, 20_000), r.nextDouble(0.1, 2), 5e6, r.nextDouble(1e5, 2e6)))))
                .endAnchor("b", Point.of(r.nextDouble(5, 20), 0, 6))
                .pretension(r.nextDouble(500, 2000))
                .build();
    }

    private static Faller faller(SplittableRandom r) {
        LoadingCurve curve = r.nextInt(3) == 0
                ? LoadingCurve.spring(r.nextDouble(2e4, 2e5))
                : plateau(r.nextDouble(2000, 8000), r.nextDouble(0.2, 1.5), 1e5, r.nextDouble(3e4, 3e5));
        return new Faller(r.nextDouble(500, 1400), curve, r.nextDouble(0.1, 2));
    }

    /** Brute force: each balanced with the other's pull held at 40 values from none to the other's bound. */
    @Test
    void withAnInLineAbsorberNoPullOfTheOtherGoesBeyondTheBound() {
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            Lifeline line = line(r);
            double station = line.run(1) * r.nextDouble(0.1, 0.9);
            Supplier<LoadPath> start = () -> path(line, station);
            List<Faller> fallers = List.of(faller(r), faller(r));
            List<Bound> bounds = new UnequalFallers(fallers, start).solve();
            for (int i = 0; i < 2; i++) {
                Bound bound = bounds.get(i);
                for (int k = 0; k <= 40; k++) {
                    double pull = bounds.get(1 - i).force() * k / 40;
                    LoadPath path = start.get();
                    FallBalance balance = new FallBalance(
                            fallers.get(i).weight(),
                            fallers.get(i).curve(),
                            fallers.get(i).freeFall());
                    balance.pulledBy(path, pull);
                    double extension = balance.solve(path);
                    String what = "seed " + seed + ", pull " + pull;
                    assertThat(path.peakForce() - pull).as(what).isLessThanOrEqualTo(bound.force() * 1.001);
                    assertThat(extension).as(what).isLessThanOrEqualTo(bound.extension() * 1.001);
                }
            }
        }
    }
}
