package org.lifeline.internal.line.installation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Point;
import org.lifeline.internal.line.LineState;
import org.lifeline.internal.line.LineSystem;
import org.lifeline.model.InlineAbsorber;
import org.lifeline.model.Installed;
import org.lifeline.model.Installed.TensioningEnd;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Support;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;
import org.lifeline.model.cable.LoadElongation;

/** The state itself that an installation leaves: tensions, lengths, passages and absorbers, with and without friction. */
class InstalledStateTest {
    /** A rope that stretches by a twenty-fifth under 2.5 kN, so that its strain energy shows in the law of its tension. */
    private static final Cable SOFT =
            Cable.builder().massPerLength(2).axialStiffness(6e4).build();

    private static final List<Point> CORNERS =
            List.of(Point.of(1, 2, 5), Point.of(9, 2, 9), Point.of(9, 11, 5.5), Point.of(15, 17, 3));

    private record Done(LineSystem sys, LineState s, Installation installation) {
        static Done of(Lifeline line) {
            LineSystem sys = new LineSystem(
                    line.supports(), Installation.weight(line), line.cable().elongation());
            Installation installation = new Installation(line);
            return new Done(sys, installation.install(sys), installation);
        }

        double start(int span) {
            return sys.forces.endSideTension(s, span);
        }

        double length() {
            double sum = 0;
            for (double each : sys.length) {
                sum += each;
            }
            return sum;
        }
    }

    @AfterEach
    void clear() {
        Thread.interrupted();
    }

    private static Lifeline line(Cable cable, Passage passage, Installed installed) {
        Lifeline.Builder b = Lifeline.builder().cable(cable).installed(installed);
        b.endAnchor("a", CORNERS.get(0));
        b.intermediateAnchor("p", CORNERS.get(1), passage);
        b.intermediateAnchor("q", CORNERS.get(2), passage);
        return b.endAnchor("b", CORNERS.get(3)).build();
    }

    /** T + ∫ε dT − w z is the same everywhere: the first integral of the elastic catenary. */
    @Test
    void theTensionOfARopeThatStretchesObeysItsFirstIntegral() {
        LoadElongation bent = LoadElongation.curve(List.of(
                new LoadElongation.Corner(0, 0),
                new LoadElongation.Corner(0.02, 1200),
                new LoadElongation.Corner(0.2, 3000)));
        Cable twice = Cable.builder().massPerLength(2).elongation(bent).build();
        for (Cable cable : List.of(SOFT, twice)) {
            for (double pretension : new double[] {600, 1150, 1250, 2500}) {
                Done d = Done.of(line(cable, Passage.free(), Installed.pretension(pretension)));
                double first = integral(cable, d, d.start(0), 5);
                assertThat(d.start(0)).isCloseTo(pretension, within(1e-9 * pretension));
                for (int i = 0; i < 3; i++) {
                    double z = CORNERS.get(i).z();
                    assertThat(integral(cable, d, d.start(i), z)).isCloseTo(first, within(1e-8 * pretension));
                    double end = d.sys.forces.startSideTension(d.s, i + 1);
                    assertThat(integral(cable, d, end, CORNERS.get(i + 1).z()))
                            .isCloseTo(first, within(1e-8 * pretension));
                    double x = CORNERS.get(i + 1).x() - CORNERS.get(i).x();
                    double y = CORNERS.get(i + 1).y() - CORNERS.get(i).y();
                    assertThat(d.s.tension[3 * i] * y)
                            .as("span %d lies in its plane", i)
                            .isCloseTo(d.s.tension[3 * i + 1] * x, within(1e-9 * pretension));
                    assertThat(Math.hypot(d.s.tension[3 * i], d.s.tension[3 * i + 1]))
                            .isLessThanOrEqualTo(d.start(i));
                }
            }
        }
    }

    private static double integral(Cable cable, Done d, double tension, double z) {
        return tension + cable.elongation().complementaryEnergy(tension) - d.sys.weight * z;
    }

    /** A taut rope of one stiffness is found to rounding; one that sags deeply is to be refined with the whole line. */
    @Test
    void itSaysWhetherEverySpanFitsToRounding() {
        assertThat(Done.of(line(SOFT, Passage.free(), Installed.pretension(2000)))
                        .installation
                        .isExact())
                .isTrue();
        assertThat(Done.of(line(SOFT, Passage.free(), Installed.pretension(200)))
                        .installation
                        .isExact())
                .isFalse();
    }

    @Test
    void cableRunsWhereNothingHoldsIt() {
        Installed by = Installed.pretension(2000);
        assertThat(Done.of(line(SOFT, Passage.free(), by)).s.passage)
                .containsExactly(LineState.STUCK, LineState.RUNS_ON, LineState.RUNS_ON, LineState.STUCK);
        for (Passage holds : List.of(Passage.clamped(), Passage.friction(0.1))) {
            assertThat(Done.of(line(SOFT, holds, by)).s.passage).containsOnly(LineState.STUCK);
        }
    }

    /** Tension, horizontal tension, sag and length of one and the same line, which friction held back as it was tensioned. */
    @Test
    void theFourFormsAgreeAgainstFriction() {
        Cable cable = Cable.builder().massPerLength(0.6).axialStiffness(1e6).build();
        for (TensioningEnd from : TensioningEnd.values()) {
            for (double friction : new double[] {0.05, 0.3}) {
                Passage passage = Passage.friction(friction);
                Done d = Done.of(line(cable, passage, Installed.pretension(2500).tensionedFrom(from)));
                Done free = Done.of(
                        line(cable, Passage.free(), Installed.pretension(2500).tensionedFrom(from)));
                Done plain = Done.of(line(cable, passage, Installed.pretension(2500)));
                int sign = from == TensioningEnd.FIRST ? -1 : 1;
                for (int i = 1; i < 3; i++) {
                    assertThat(d.sys.forces.logRatio(d.s, i))
                            .as("capstan, from %s", from)
                            .isCloseTo(sign * friction * d.sys.forces.turned(d.s, i), within(1e-9));
                    assertThat(free.sys.forces.logRatio(free.s, i))
                            .as("no friction")
                            .isCloseTo(0, within(1e-9));
                    assertThat(plain.sys.forces.logRatio(plain.s, i))
                            .as("from no end")
                            .isCloseTo(0, within(1e-9));
                }
                for (int span = 1; span <= 3; span++) {
                    double h = Math.hypot(d.s.tension[3 * span - 3], d.s.tension[3 * span - 2]);
                    same(
                            d,
                            Done.of(line(
                                    cable,
                                    passage,
                                    Installed.horizontalTension(h).inSpan(span).tensionedFrom(from))));
                    // f = w l²/(8 H cos α), the parabola: near enough to name a sag by.
                    double run = Math.hypot(
                            CORNERS.get(span).x() - CORNERS.get(span - 1).x(),
                            CORNERS.get(span).y() - CORNERS.get(span - 1).y());
                    double sag = d.sys.weight * run * d.sys.chord[span - 1] / (8 * h);
                    Done bySag = Done.of(
                            line(cable, passage, Installed.initialSag(span, sag).tensionedFrom(from)));
                    assertThat(bySag.start(span - 1)).isCloseTo(d.start(span - 1), within(0.01 * d.start(span - 1)));
                    assertThat(bySag.sys.forces.logRatio(bySag.s, 1))
                            .isCloseTo(sign * friction * bySag.sys.forces.turned(bySag.s, 1), within(1e-9));
                }
                same(
                        d,
                        Done.of(line(
                                cable,
                                passage,
                                Installed.unstretchedLength(d.length()).tensionedFrom(from))));
            }
        }
    }

    private static void same(Done d, Done other) {
        // The length of a taut line knows its tension only to EA times the rounding of the length.
        assertThat(other.s.tension).containsExactly(d.s.tension, within(1e-5));
        assertThat(other.sys.length).containsExactly(d.sys.length, within(1e-9));
    }

    @Test
    void againstFrictionALineCanBeTooSlackAsWell() {
        Passage passage = Passage.friction(0.5);
        Installed slack = Installed.pretension(160);
        assertThat(Done.of(line(SOFT, passage, slack)).start(0)).isCloseTo(160, within(1e-9));
        for (Installed each : List.of(
                slack.tensionedFrom(TensioningEnd.FIRST),
                Installed.initialSag(1, 5).tensionedFrom(TensioningEnd.FIRST),
                Installed.unstretchedLength(60).tensionedFrom(TensioningEnd.FIRST))) {
            assertThatThrownBy(() -> Done.of(line(SOFT, passage, each))).isInstanceOf(InvalidInputException.class);
        }
    }

    /** Far enough below its first support a cable of a small tension would have to push. */
    @Test
    void aLineThatDropsByMoreThanItsTensionCarriesIsTooSlack() {
        Lifeline.Builder b = Lifeline.builder().cable(SOFT).installed(Installed.pretension(400));
        b.endAnchor("a", Point.of(0, 0, 60));
        b.intermediateAnchor("p", Point.of(10, 0, 50), Passage.free());
        b.intermediateAnchor("q", Point.of(20, 0, 38), Passage.free());
        Lifeline line = b.endAnchor("b", Point.of(30, 0, 38)).build();
        assertThatThrownBy(() -> Done.of(line))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("is too slack")
                .hasMessageContaining("here it is 400.0 N");
    }

    /** Only a cable that is pulled straight has a shape without weight; a slack one is given next to none. */
    @Test
    void aWeightlessCableThatIsSlackIsGivenNextToNoWeight() {
        Cable weightless = Cable.builder().massPerLength(0).axialStiffness(1e6).build();
        double chords = 0;
        for (int i = 1; i < CORNERS.size(); i++) {
            chords += CORNERS.get(i).distance(CORNERS.get(i - 1));
        }
        for (Installed taut : List.of(
                Installed.pretension(500),
                Installed.horizontalTension(500),
                Installed.unstretchedLength(chords - 1e-6))) {
            assertThat(Installation.weight(line(weightless, Passage.free(), taut)))
                    .isZero();
        }
        for (Installed slack : List.of(Installed.initialSag(1, 0.1), Installed.unstretchedLength(chords + 1e-6))) {
            assertThat(Installation.weight(line(weightless, Passage.free(), slack)))
                    .isPositive()
                    .isLessThan(1e-8);
        }
        Lifeline heavy = line(SOFT, Passage.free(), Installed.initialSag(1, 0.3));
        assertThat(Installation.weight(heavy)).isEqualTo(heavy.weightPerLength());
    }

    private static Done withAbsorber(double tension, LoadingCurve curve) {
        return Done.of(Lifeline.builder()
                .cable(SOFT)
                .support(Support.end("a", Point.of(0, 0, 5)).withInlineAbsorber(InlineAbsorber.of(curve)))
                .endAnchor("b", Point.of(12, 0, 7))
                .pretension(tension)
                .build());
    }

    /** What is to be torn open is whole; what gives from no force on has been drawn out, at most to its stop. */
    @Test
    void anAbsorberHasYieldedOnlyIfItGivesFromNoForceOn() {
        LoadingCurve tears = LoadingCurve.through(
                List.of(new LoadingCurve.Corner(0, 8000), new LoadingCurve.Corner(1, 8000)), 1e5, 2e5);
        Done whole = withAbsorber(3000, tears);
        assertThat(whole.s.extension[0]).isCloseTo(0.03, within(1e-12));
        assertThat(whole.sys.installedExtension[0]).isEqualTo(whole.s.extension[0]);
        assertThat(whole.s.yielded[0]).isZero();
        assertThat(whole.s.yielding[0]).isFalse();
        LoadingCurve gives = LoadingCurve.through(
                List.of(
                        new LoadingCurve.Corner(0, 0),
                        new LoadingCurve.Corner(0.1, 1000),
                        new LoadingCurve.Corner(0.6, 2000)),
                Double.POSITIVE_INFINITY,
                5000);
        double[][] states = {{500, 0.05, 0.05, 0}, {1500, 0.35, 0.35, 1}, {2500, 0.7, 0.6, 2}};
        for (double[] each : states) {
            Done drawn = withAbsorber(each[0], gives);
            assertThat(drawn.s.extension[0]).isCloseTo(each[1], within(1e-12));
            assertThat(drawn.s.yielded[0]).isCloseTo(each[2], within(1e-12));
            assertThat(drawn.s.yielding[0]).isTrue();
            assertThat(drawn.s.piece[0]).isEqualTo((int) each[3]);
        }
    }

    @Test
    void anInterruptEndsIt() {
        Lifeline line = line(SOFT, Passage.free(), Installed.pretension(2000));
        Thread.currentThread().interrupt();
        assertThatThrownBy(() -> Done.of(line)).isInstanceOf(CancellationException.class);
    }
}
