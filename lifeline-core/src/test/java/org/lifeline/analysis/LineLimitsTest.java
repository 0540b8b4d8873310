package org.lifeline.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.state.AppliedLoad;
import org.lifeline.base.Point;
import org.lifeline.model.Attachment;
import org.lifeline.model.Installed;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.PlausibleLine;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;
import org.lifeline.model.cable.Cable;

/** Splits that change nothing, passages at their limits, and very long lines. */
class LineLimitsTest {
    private static final int CASES = Boolean.getBoolean("lifeline.long") ? 1000 : 60;

    /** Without weight an unloaded span is straight: a free anchor on it turns nothing and changes nothing. */
    @Test
    void aFreeAnchorOnAStraightSpan() {
        for (long seed = 1; seed <= CASES; seed++) {
            PlausibleLine p = new PlausibleLine(seed, true);
            PlausibleLine q = new PlausibleLine(seed, true);
            int spans = p.points.size() - 1;
            p.massPerLength = 0;
            q.massPerLength = 0;
            if (spans == 1) {
                continue;
            }
            // Not at a yielding anchor: its span turns and the anchor in the middle would not.
            p.endStiffness = p.postStiffness = Double.POSITIVE_INFINITY;
            q.endStiffness = q.postStiffness = Double.POSITIVE_INFINITY;
            int cut = p.span == 1 ? spans : 1;
            Point a = p.points.get(cut - 1);
            Point b = p.points.get(cut);
            Point between = Point.of(
                    a.x() + 0.37 * (b.x() - a.x()), a.y() + 0.37 * (b.y() - a.y()), a.z() + 0.37 * (b.z() - a.z()));
            q.points.add(cut, between);
            q.friction.add(cut == 1 ? 0 : cut - 1, 0.0);
            q.span = p.span > cut ? p.span + 1 : p.span;
            ArrestResult x = Arrests.solve(p);
            ArrestResult y = Arrests.solve(q);
            assertThat(y.lineLoad()).as(p.toString()).isCloseTo(x.lineLoad(), within(2e-6 * x.lineLoad()));
            assertThat(y.deployment()).as(p.toString()).isCloseTo(x.deployment(), within(1e-5));
            assertThat(y.lineDescent()).as(p.toString()).isCloseTo(x.lineDescent(), within(1e-6));
            assertThat(y.maximumTension())
                    .as(p.toString())
                    .isCloseTo(x.maximumTension(), within(2e-6 * x.maximumTension()));
            assertThat(y.peak().supports().get(cut).force()).as(p.toString()).isLessThan(1e-6 * x.lineLoad());
        }
    }

    /** Stiffness of the softest anchor that the model takes [N/m]. */
    private static final double SOFT = 1e-2;

    /** An anchor of hardly any stiffness, put where the cable hangs, carries nothing and holds nothing. */
    @Test
    void anAnchorAsSoftAsNothing() {
        for (double mu : new double[] {0, 0.3, Double.POSITIVE_INFINITY}) {
            Lifeline whole = Lifeline.builder()
                    .cable(Cable.builder()
                            .massPerLength(0.6)
                            .axialStiffness(4e6)
                            .build())
                    .endAnchor("a", Point.of(0, 0, 8))
                    .endAnchor("b", Point.of(15, 0, 9))
                    .installed(Installed.horizontalTension(800))
                    .build();
            LineEquilibrium bare = Statics.withDefaults().solve(whole, List.of());
            CablePiece piece = bare.span(1).pieces().get(0);
            Point at = piece.pointAt(0.4 * piece.unstretchedLength());
            Support soft = Support.intermediate(
                            "soft", at, Double.isInfinite(mu) ? Passage.clamped() : Passage.friction(mu))
                    .withStiffness(new Stiffness(SOFT, SOFT, SOFT));
            Lifeline cut = Lifeline.builder()
                    .cable(whole.cable())
                    .support(whole.supports().get(0))
                    .support(soft)
                    .support(whole.supports().get(1))
                    .installed(Installed.horizontalTension(800))
                    .build();
            AppliedLoad onWhole = new AppliedLoad(Place.of(1, 10.5), Attachment.GRIPPED, 3000);
            AppliedLoad onCut = new AppliedLoad(Place.of(2, 10.5 - at.x()), Attachment.GRIPPED, 3000);
            LineEquilibrium x = Statics.withDefaults().solve(whole, List.of(onWhole));
            LineEquilibrium y = Statics.withDefaults().solve(cut, List.of(onCut));
            // All that the anchor can do is the pull of its spring, here below 10 mN, on a line of more than 100 N/m; a
            // taut
            // line multiplies it as it multiplies the load of 3000 N.
            double pull = SOFT * y.support("soft").displacement().magnitude();
            assertThat(pull).isLessThan(0.01);
            assertThat(y.firstTension()).isCloseTo(x.firstTension(), within(pull * x.firstTension() / 3000));
            assertThat(y.lastTension()).isCloseTo(x.lastTension(), within(pull * x.lastTension() / 3000));
            assertThat(y.loads().get(0).point().distance(x.loads().get(0).point()))
                    .isLessThan(pull / 100);
            if (!Double.isInfinite(mu)) {
                continue; // it may sit anywhere on the cable
            }
            Point moved = at.plus(y.support("soft").displacement());
            CablePiece first = x.span(1).pieces().get(0);
            assertThat(moved.distance(first.pointAt(0.4 * piece.unstretchedLength())))
                    .isLessThan(pull / 100);
        }
    }

    /** Very rough anchors hold like clamps; hardly rough ones let run like free ones; stiff springs hold like rock. */
    @Test
    void passagesAndSpringsAtTheirLimits() {
        for (long seed = 1; seed <= CASES; seed++) {
            PlausibleLine p = new PlausibleLine(seed, true);
            p.endStiffness = p.postStiffness = Double.POSITIVE_INFINITY;
            PlausibleLine q = new PlausibleLine(seed, true);
            q.endStiffness = q.postStiffness = 1e13;
            near(p, Arrests.solve(p), Arrests.solve(q), 1e-5);

            PlausibleLine free = new PlausibleLine(seed, false).allFree();
            PlausibleLine smooth = new PlausibleLine(seed, false);
            smooth.friction.replaceAll(mu -> 1e-7);
            near(free, Arrests.solve(free), Arrests.solve(smooth), 1e-4);
        }
    }

    private static void near(PlausibleLine p, ArrestResult a, ArrestResult b, double share) {
        assertThat(b.lineLoad()).as(p.toString()).isCloseTo(a.lineLoad(), within(share * a.lineLoad()));
        assertThat(b.maximumTension())
                .as(p.toString())
                .isCloseTo(a.maximumTension(), within(share * a.maximumTension()));
        assertThat(b.totalFallDistance())
                .as(p.toString())
                .isCloseTo(a.totalFallDistance(), within(share * a.totalFallDistance()));
    }

    /** An absorber whose activation force is out of reach and whose rise is stiff is not there. */
    @Test
    void anInlineAbsorberOutOfReach() {
        for (long seed = 1; seed <= CASES; seed++) {
            PlausibleLine p = new PlausibleLine(seed, true);
            p.inline[0] = p.inline[1] = Double.NaN;
            PlausibleLine q = new PlausibleLine(seed, true);
            q.inline[0] = q.inline[1] = 1e8;
            q.inlineStiffness = 1e14;
            ArrestResult a = Arrests.solve(p);
            ArrestResult b = Arrests.solve(q);
            near(p, a, b, 2e-6);
            assertThat(b.inlineAbsorbers()).hasSize(2).allMatch(s -> !s.bottomedOut() && s.extension() < 1e-8);
            assertThat(a.inlineAbsorbers()).isEmpty();
        }
    }

    @Test
    void aThousandSpans() {
        for (String kind : List.of("free", "friction", "mixed", "climbing")) {
            SplittableRandom r = new SplittableRandom(1000);
            Lifeline.Builder b = Lifeline.builder()
                    .cable(Cable.builder()
                            .massPerLength(0.5)
                            .axialStiffness(4e6)
                            .build())
                    .pretension(3000)
                    .endAnchor("s0", Point.of(0, 0, 20));
            Point at = Point.of(0, 0, 20);
            List<Double> z = new ArrayList<>();
            for (int i = 1; i <= 1000; i++) {
                double up = kind.equals("climbing") ? 0.02 : 0;
                at = Point.of(at.x() + 8 + r.nextDouble(), at.y() + r.nextDouble(-0.5, 0.5), at.z() + up);
                z.add(at.z());
                if (i < 1000) {
                    Passage passage =
                            switch (kind) {
                                case "friction" -> Passage.friction(0.2);
                                case "mixed" -> i % 97 == 0 ? Passage.clamped() : Passage.friction(0.05 * (i % 3));
                                default -> Passage.free();
                            };
                    b.intermediateAnchor("s" + i, at, passage);
                } else {
                    b.endAnchor("s" + i, at);
                }
            }
            Lifeline line = b.build();
            boolean runsFree = kind.equals("free") || kind.equals("climbing");
            Attachment attachment = runsFree ? Attachment.FREE_RUNNING : Attachment.GRIPPED;
            List<AppliedLoad> loads = List.of(
                    new AppliedLoad(Place.of(500, 4), attachment, 6000),
                    new AppliedLoad(Place.of(501, 3), Attachment.FREE_RUNNING, 1000));
            LineEquilibrium e = Statics.withDefaults().withTemperature(-10).solve(line, loads);
            Arrests.balances(kind, e);
            assertThat(e.convergence().residual()).as(kind).isLessThan(1e-9);
            if (runsFree) {
                // One first integral along the whole line: T + T²/2EA − w z is constant where the cable runs free.
                double first = psi(e.firstTension(), 20, line);
                assertThat(psi(e.lastTension(), z.get(999), line)).as(kind).isCloseTo(first, within(1e-6 * first));
            }
        }
    }

    private static double psi(double tension, double z, Lifeline line) {
        double hot = line.weightPerLength() / (1 - 25 * 12e-6);
        return tension + tension * tension / (2 * 4e6) - hot * z;
    }
}
