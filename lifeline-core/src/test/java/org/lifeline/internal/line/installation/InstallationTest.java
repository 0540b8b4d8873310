package org.lifeline.internal.line.installation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Point;
import org.lifeline.base.Refusal;
import org.lifeline.base.Vector3;
import org.lifeline.internal.line.Piece;
import org.lifeline.internal.path.LineModel;
import org.lifeline.model.InlineAbsorber;
import org.lifeline.model.Installed;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;
import org.lifeline.model.cable.LoadElongation;

/** The installed state in its four forms, and what is refused. */
class InstallationTest {
    private static final Cable CABLE =
            Cable.builder().massPerLength(0.6).axialStiffness(4e6).build();

    /** A line over posts of different heights, with corners, springs and every passage. */
    private static Lifeline line(long seed, Cable cable, Installed installed) {
        SplittableRandom r = new SplittableRandom(seed);
        int spans = r.nextInt(1, 8);
        Lifeline.Builder b = Lifeline.builder().cable(cable).installed(installed);
        Point at = Point.of(0, 0, 20);
        for (int i = 0; i <= spans; i++) {
            Support s = i == 0 || i == spans
                    ? Support.end("s" + i, at)
                    : Support.intermediate(
                            "s" + i,
                            at,
                            new Passage[] {Passage.free(), Passage.clamped(), Passage.friction(0.3)}[r.nextInt(3)]);
            b.support(r.nextBoolean() ? s : s.withStiffness(new Stiffness(2e4, 3e4, 5e4)));
            double heading = r.nextDouble(-0.5, 0.5);
            double run = r.nextDouble(4, 20);
            at = Point.of(
                    at.x() + run * Math.cos(heading),
                    at.y() + run * Math.sin(heading),
                    at.z() + run * r.nextDouble(-0.4, 0.4));
        }
        return b.build();
    }

    private static Cable cable(long seed) {
        return seed % 2 == 0
                ? CABLE
                : Cable.builder()
                        .massPerLength(0.6)
                        .elongation(LoadElongation.curve(List.of(
                                new LoadElongation.Corner(0, 0),
                                new LoadElongation.Corner(0.001, 1000),
                                new LoadElongation.Corner(0.002, 5000))))
                        .build();
    }

    @Test
    void theFourFormsAgree() {
        for (long seed = 1; seed <= 200; seed++) {
            Cable cable = cable(seed);
            Installed by = Installed.pretension(new SplittableRandom(seed).nextDouble(800, 5000));
            Lifeline line = line(seed, cable, by);
            LineModel m = new LineModel(line);
            assertThat(m.pieces(0).get(0).startTension().magnitude())
                    .as("seed " + seed)
                    .isCloseTo(by.value(), within(1e-11 * by.value()));
            double length = 0;
            for (int i = 0; i < line.spans(); i++) {
                Piece piece = m.pieces(i).get(0);
                length += piece.length();
                Vector3 miss = piece.end().minus(line.supports().get(i + 1).position());
                assertThat(miss.magnitude()).as("seed " + seed).isLessThan(1e-11 * line.run(i + 1));
                if (i > 0) {
                    double before = m.pieces(i - 1).get(0).endTension().magnitude();
                    double behind = piece.startTension().magnitude();
                    assertThat(behind).as("seed " + seed).isCloseTo(before, within(1e-10 * before));
                }
            }
            int span = 1 + (int) (seed % line.spans());
            Piece named = m.pieces(span - 1).get(0);
            double h = named.startTension().horizontal();
            double slope = line.rise(span) / line.run(span);
            double at = (h * slope - named.startTension().z()) / named.weight();
            Point low = named.at(at);
            double sag = named.start().z() + slope * low.horizontalDistance(named.start()) - low.z();
            for (Installed other : List.of(
                    Installed.unstretchedLength(length),
                    Installed.horizontalTension(h).inSpan(span),
                    Installed.initialSag(span, sag))) {
                LineModel n = new LineModel(line.withInstalled(other));
                for (int i = 0; i < line.spans(); i++) {
                    Vector3 t = m.pieces(i).get(0).startTension();
                    Vector3 u = n.pieces(i).get(0).startTension();
                    // The length of a taut line knows its tension only to EA times the length's rounding.
                    assertThat(t.minus(u).magnitude())
                            .as("seed " + seed + " by " + other.form())
                            .isLessThan(2e-8 * t.magnitude());
                }
            }
        }
    }

    @Test
    void springsHoldTheInstalledReaction() {
        for (long seed = 1; seed <= 50; seed++) {
            LineModel m = new LineModel(line(seed, CABLE, Installed.pretension(2000)));
            for (int i = 0; i <= m.line().spans(); i++) {
                assertThat(m.displacement(i).magnitude()).as("seed " + seed).isLessThan(1e-9);
                assertThat(m.support(i).distance(m.line().supports().get(i).position()))
                        .isLessThan(1e-9);
                assertThat(m.slip(i)).isCloseTo(0, within(1e-10));
            }
        }
    }

    private static Lifeline two(Installed installed) {
        return Lifeline.builder()
                .cable(CABLE)
                .endAnchor("a", Point.of(0, 0, 5))
                .intermediateAnchor("post", Point.of(10, 0, 5), Passage.free())
                .endAnchor("b", Point.of(40, 0, 5))
                .installed(installed)
                .build();
    }

    private static String refusal(Lifeline line) {
        List<String> list = Refusal.of(() -> new LineModel(line));
        return list.size() == 1 ? list.get(0) : list.toString();
    }

    @Test
    void tooSlackForTheLongSpan() {
        // A level inextensible span hangs at the tension w L cosh(λ)/(2 λ), least at λ tanh λ = 1 (recalled): 0.7544 w
        // L.
        double least = 0.6 * 9.80665 * 30 * 0.754437;
        assertThat(refusal(two(Installed.pretension(0.99 * least))))
                .startsWith("installed.pretension: ")
                .contains("is too slack: the cable would run together into one span; the tension at the first support"
                        + " must be at least ");
        assertThat(new LineModel(two(Installed.pretension(1.01 * least))).line().spans())
                .isEqualTo(2);
    }

    @Test
    void theLeastTensionThatIsNamedIsTheLeast() {
        String text = refusal(two(Installed.pretension(10)));
        double named = Double.parseDouble(text.replaceAll(".*at least ([0-9.E]+) N, and.*", "$1"));
        assertThat(named).isCloseTo(0.6 * 9.80665 * 30 * 0.754437, within(0.01));
        assertThat(new LineModel(two(Installed.pretension(named * 1.0001)))
                        .line()
                        .spans())
                .isEqualTo(2);
        assertThat(refusal(two(Installed.pretension(named * 0.9999)))).contains("is too slack");
    }

    @Test
    void oneSpanBelowItsLeastTension() {
        Lifeline one = Lifeline.builder()
                .cable(CABLE)
                .endAnchor("a", Point.of(0, 0, 5))
                .endAnchor("b", Point.of(30, 0, 5))
                .pretension(100)
                .build();
        assertThat(refusal(one))
                .startsWith("installed.pretension: 100.0 N: must be at least 133.")
                .endsWith(" N for the span to hang");
        assertThat(refusal(one.withInstalled(Installed.horizontalTension(1e-9))))
                .isEqualTo("installed.horizontalTension: 1.0E-9 N: no cable of this weight can hang so in span 1");
        assertThat(Refusal.of(() -> one.withInstalled(Installed.initialSag(1, 1e12))))
                .containsExactly("installed.initialSag: 1.0E12 m: must be at most the span of 30.0 m");
        // Its own number tells which of two shapes a single span has: the slack one as well.
        LineModel slack = new LineModel(one.withInstalled(Installed.unstretchedLength(60)));
        assertThat(slack.pieces(0).get(0).length()).isCloseTo(60, within(1e-12));
    }

    @Test
    void aSagThatOnlyASlackSpanHas() {
        // 25 m of sag in the 30 m span: beyond the least tension, where the 10 m span would feed it for ever.
        assertThat(refusal(two(Installed.initialSag(2, 25))))
                .isEqualTo(
                        "installed.initialSag: 25.0 m: is too slack: the cable of the other spans would run into span 2");
        assertThat(refusal(two(Installed.unstretchedLength(60))))
                .startsWith("installed.unstretchedLength: 60.0 m: must be at most ");
        assertThat(Refusal.of(() -> two(Installed.unstretchedLength(1e-30))))
                .singleElement()
                .asString()
                .contains("would stretch the cable");
    }

    @Test
    void theGreatestLengthThatIsNamedIsTheGreatest() {
        String text = refusal(two(Installed.unstretchedLength(60)));
        double named = Double.parseDouble(text.replaceAll(".*at most ([0-9.E]+) m.*", "$1"));
        assertThat(new LineModel(two(Installed.unstretchedLength(named * 0.999999)))
                        .line()
                        .spans())
                .isEqualTo(2);
        assertThat(refusal(two(Installed.unstretchedLength(named * 1.000001)))).contains("must be at most");
    }

    private static Lifeline withAbsorbers(double tension, LoadingCurve curve) {
        return Lifeline.builder()
                .cable(CABLE)
                .support(Support.end("a", Point.of(0, 0, 5)).withInlineAbsorber(InlineAbsorber.of(curve)))
                .support(Support.end("b", Point.of(12, 0, 7)).withInlineAbsorber(InlineAbsorber.of(curve)))
                .pretension(tension)
                .build();
    }

    private static LoadingCurve plateau(double stiffness) {
        return LoadingCurve.through(
                List.of(new LoadingCurve.Corner(0, 8000), new LoadingCurve.Corner(1, 8000)), stiffness, 2e5);
    }

    @Test
    void absorbersStartWithTheInstalledTension() {
        LineModel rigid = new LineModel(withAbsorbers(3000, plateau(Double.POSITIVE_INFINITY)));
        assertThat(rigid.extension(0)).isZero();
        assertThat(rigid.extension(1)).isZero();
        LineModel elastic = new LineModel(withAbsorbers(3000, plateau(1e5)));
        assertThat(elastic.extension(0)).isCloseTo(0.03, within(1e-12));
        double last = elastic.pieces(0).get(0).endTension().magnitude();
        assertThat(elastic.extension(1)).isCloseTo(last / 1e5, within(1e-12));
        // A curve from no force on has extended already.
        LoadingCurve soft = LoadingCurve.through(
                List.of(new LoadingCurve.Corner(0, 0), new LoadingCurve.Corner(1, 10_000)),
                Double.POSITIVE_INFINITY,
                2e5);
        LineModel given = new LineModel(withAbsorbers(3000, soft));
        assertThat(given.extension(0)).isCloseTo(0.3, within(1e-12));
        // The cable is where the supports are: extension is counted from the installed state.
        assertThat(given.pieces(0).get(0).start().distance(Point.of(0, 0, 5))).isLessThan(1e-12);
    }

    @Test
    void anAbsorberThatTheInstalledTensionActivates() {
        assertThat(refusal(withAbsorbers(8000, plateau(1e5))))
                .isEqualTo(
                        "support[0].inlineAbsorber: 8000.0 N: must activate above the installed tension there, 8000.0 N");
        // 2 m higher at the far end the tension is w · 2 m more.
        assertThat(refusal(withAbsorbers(7995, plateau(1e5))))
                .startsWith(
                        "support[1].inlineAbsorber: 8000.0 N: must activate above the installed tension there, 8006.");
    }
}
