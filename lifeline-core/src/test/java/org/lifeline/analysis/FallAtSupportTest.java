package org.lifeline.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.lifeline.base.Units.kN;
import static org.lifeline.base.Units.meganewtons;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.analysis.state.AppliedLoad;
import org.lifeline.analysis.state.LoadPosition;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.base.Point;
import org.lifeline.base.Vector3;
import org.lifeline.model.Attachment;
import org.lifeline.model.Connection;
import org.lifeline.model.Connection.PersonalAbsorber;
import org.lifeline.model.Fall;
import org.lifeline.model.InlineAbsorber;
import org.lifeline.model.Installed;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.DeploymentForce;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;
import org.lifeline.testing.ArrestCase;
import org.lifeline.testing.RandomLines;
import org.lifeline.verify.Verifier;

/** A fall at a support: the connection pulls on the anchor, and the line takes part by what the anchor yields. */
class FallAtSupportTest {
    private static final double G = 9.80665;
    private static final List<String> SUPPORTS = List.of("a", "p", "q", "b");

    private static Stiffness soft(double vertical) {
        return new Stiffness(4e5, 3e5, vertical);
    }

    private static Lifeline line(Stiffness stiffness) {
        return Lifeline.builder()
                .cable(Cable.builder()
                        .weightPerLength(4.2)
                        .axialStiffness(meganewtons(4.9))
                        .build())
                .support(Support.end("a", Point.of(0, 0, 6)).withStiffness(stiffness))
                .support(Support.intermediate("p", Point.of(12, 0, 6), Passage.friction(0.12))
                        .withStiffness(stiffness))
                .support(Support.intermediate("q", Point.of(24, 0, 6), Passage.friction(0.12))
                        .withStiffness(stiffness))
                .support(Support.end("b", Point.of(36, 0, 6)).withStiffness(stiffness))
                .pretension(kN(1.5))
                .build();
    }

    private static Worker worker(Connection connection) {
        return Worker.builder("w")
                .mass(100)
                .walkingLevel(4.5)
                .connection(connection)
                .build();
    }

    private static Connection absorber() {
        return Connection.lanyard(
                1.8,
                PersonalAbsorber.builder()
                        .clearanceForce(kN(4))
                        .maximumForce(kN(6))
                        .maximumExtension(1.2)
                        .initialStiffness(1e5)
                        .stopStiffness(2e5)
                        .build());
    }

    private static Fall fall(String support, Connection connection) {
        return Fall.builder("f")
                .at(Place.atSupport(support))
                .faller(worker(connection))
                .build();
    }

    private static ArrestResult solve(Lifeline line, Fall fall) {
        return EnergyBalance.withDefaults().solve(line, fall);
    }

    /** m g (h + x) = F x − F²/2k on the plateau, by hand. */
    @ParameterizedTest
    @ValueSource(strings = {"a", "p", "q", "b"})
    void aRigidSupportLeavesEverythingToTheConnection(String id) {
        ArrestResult r = solve(line(Stiffness.rigid()), fall(id, absorber()));
        double h = 1.8;
        double x = (100 * G * h + 6000.0 * 6000.0 / 2e5) / (6000 - 100 * G);

        assertThat(r.freeFall()).isCloseTo(h, within(1e-12));
        assertThat(r.lineLoad()).isCloseTo(6000, within(1e-6));
        assertThat(r.deployment()).isCloseTo(x, within(1e-9));
        assertThat(r.lineDescent()).isZero();
        assertThat(r.totalFallDistance()).isCloseTo(h + x + r.harnessStretch(), within(1e-9));
        assertThat(r.energy().lineWork()).isCloseTo(0, within(1e-9));
        assertThat(r.maximumTension()).isCloseTo(r.before().maximumTension(), within(1e-6));
        Vector3 own = r.before().support(id).vector();
        assertThat(r.peak()
                        .support(id)
                        .vector()
                        .minus(own.plus(new Vector3(0, 0, -6000)))
                        .magnitude())
                .isLessThan(1e-6);
        for (String other : SUPPORTS) {
            if (!other.equals(id)) {
                assertThat(r.anchorLoad(other))
                        .isCloseTo(r.before().support(other).force(), within(1e-6));
            }
        }
        assertThat(Verifier.withDefaults().arrest(r).failures()).isEmpty();
    }

    /** A lanyard as a spring of stiffness k: F = m g (1 + √(1 + 2 k h/m g)), the impact factor of any textbook. */
    @Test
    void aPlainLanyardAtARigidAnchorFollowsTheImpactFormula() {
        double k = 1.2e5;
        ArrestResult r =
                solve(line(Stiffness.rigid()), fall("p", Connection.plainLanyard(1.8, LoadingCurve.spring(k))));
        double weight = 100 * G;
        double expected = weight * (1 + Math.sqrt(1 + 2 * k * r.freeFall() / weight));

        assertThat(r.arrestForce()).isCloseTo(expected, within(1e-6));
        assertThat(r.bottomedOut()).isFalse();
    }

    /**
     * The same equilibrium from a line whose supports are rigid and stand where the elastic ones have gone, with the same
     * cable in each span: its reactions and the pull must be what the springs hold.
     */
    @Test
    void theDisplacedSupportIsHeldBySpringAndCableTogether() {
        double k = 2e4;
        Stiffness onlyThere = new Stiffness(Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, k);
        Lifeline line = Lifeline.builder()
                .cable(Cable.builder()
                        .weightPerLength(6)
                        .axialStiffness(meganewtons(1.2))
                        .build())
                .endAnchor("a", Point.of(0, 0, 6))
                .support(Support.intermediate("p", Point.of(9, 0, 6.2), Passage.clamped())
                        .withStiffness(onlyThere))
                .endAnchor("b", Point.of(21, 0, 6))
                .pretension(kN(2))
                .build();
        ArrestResult r = solve(line, fall("p", absorber()));
        double down = r.lineDescent();
        assertThat(down).isGreaterThan(0.05);

        double vertical = 0;
        for (int i = 1; i <= 2; i++) {
            double length = r.before().span(i).unstretchedLength();
            assertThat(r.peak().span(i).unstretchedLength()).isCloseTo(length, within(1e-9));
            Point left = line.supports().get(i - 1).position();
            Point right = line.supports().get(i).position();
            Vector3 drop = new Vector3(0, 0, -down);
            Lifeline alone = Lifeline.builder()
                    .cable(line.cable())
                    .endAnchor("l", i == 2 ? left.plus(drop) : left)
                    .endAnchor("r", i == 1 ? right.plus(drop) : right)
                    .installed(Installed.unstretchedLength(length))
                    .build();
            LineEquilibrium state = Statics.withDefaults().solve(alone, List.of());
            vertical += state.support(i == 1 ? "r" : "l").vector().z();
            assertThat(r.peak().span(i).horizontalTension())
                    .isCloseTo(state.span(1).horizontalTension(), within(1e-6 * state.maximumTension()));
        }
        double held = r.before().support("p").vector().z();
        assertThat(vertical - r.lineLoad() - held).isCloseTo(-k * down, within(1e-6 * r.lineLoad()));
    }

    @Test
    void aSofterSupportTakesMoreAndLoadsLess() {
        double load = Double.POSITIVE_INFINITY;
        double descent = -1;
        for (double k : new double[] {Double.POSITIVE_INFINITY, 2e5, 5e4, 2e4, 1e4}) {
            ArrestResult r = solve(line(soft(k)), fall("p", Connection.plainLanyard(1.8, LoadingCurve.spring(1e5))));
            assertThat(r.lineLoad()).isLessThan(load);
            assertThat(r.lineDescent()).isGreaterThan(descent);
            load = r.lineLoad();
            descent = r.lineDescent();
        }
    }

    /** The rigid support is the limit of stiff ones, and the worst for the arrest force on the line. */
    @Test
    void noFallInASpanIsHarderThanOneAtARigidSupport() {
        Lifeline line = line(Stiffness.rigid());
        Connection rope = Connection.plainLanyard(1.8, LoadingCurve.spring(1e5));
        double at = solve(line, fall("p", rope)).arrestForce();
        double stiff =
                solve(line(new Stiffness(1e9, 1e9, 1e9)), fall("p", rope)).arrestForce();
        assertThat(stiff).isCloseTo(at, within(1e-3 * at)).isLessThan(at);
        for (double station : new double[] {0.002, 0.05, 1, 6}) {
            Worker grips =
                    worker(rope).toBuilder("w").attachment(Attachment.GRIPPED).build();
            Fall inSpan = Fall.builder("f")
                    .at(Place.of(2, station))
                    .freeFall(1.8)
                    .faller(grips)
                    .build();
            assertThat(solve(line, inSpan).arrestForce())
                    .as("station %s", station)
                    .isLessThan(at);
        }
    }

    /** The connection pulls on the anchor side: the absorber in the line sees the cable alone. */
    @Test
    void anInLineAbsorberAtThatEndStaysOut() {
        Lifeline line = line(Stiffness.rigid())
                .withSupports(s -> s.id().equals("a")
                        ? s.withInlineAbsorber(InlineAbsorber.of(LoadingCurve.through(
                                List.of(new LoadingCurve.Corner(0, 2500), new LoadingCurve.Corner(0.5, 2500)),
                                1e6,
                                2e5)))
                        : s);
        ArrestResult r = solve(line, fall("a", absorber()));

        assertThat(r.lineLoad()).isCloseTo(6000, within(1e-6));
        assertThat(r.inlineAbsorbers()).hasSize(1);
        assertThat(r.inlineAbsorbers().get(0).extension())
                .isCloseTo(r.before().inlineAbsorbers().get(0).extension(), within(1e-12));
        assertThat(Verifier.withDefaults().arrest(r).failures()).isEmpty();
    }

    @Test
    void theResultNamesTheSupport() {
        ArrestResult r = solve(line(soft(5e4)), fall("q", absorber()));
        LoadPosition load = r.peak().loads().get(0);

        assertThat(load.span()).isZero();
        assertThat(load.restsOn()).isEqualTo(Optional.of("q"));
        assertThat(load.point()).isEqualTo(r.attachmentAtPeak());
        assertThat(r.span()).isEqualTo(3);
        assertThat(r.sag()).isCloseTo(0, within(1e-9));
        assertThat(r.clearance().rows().get(0).item()).isEqualTo("support before the fall");
        assertThat(r.clearance().rows().get(1).item()).isEqualTo("descent of the support");
        assertThat(r.clearance().rows().get(1).value()).isCloseTo(r.lineDescent(), within(1e-12));
        assertThat(r.peak().support("q").displacement().z()).isCloseTo(-r.lineDescent(), within(1e-12));
    }

    /** Somebody may hang from a support, too. */
    @Test
    void aWorkerMayHangFromASupport() {
        Lifeline line = line(soft(5e4));
        Fall after = Fall.builder("f")
                .at(Place.of(2, 5))
                .faller(worker(absorber()))
                .hanging(worker(absorber()).toBuilder("h").build(), Place.atSupport("p"))
                .build();
        ArrestResult r = solve(line, after);
        LineEquilibrium rest = Statics.withDefaults()
                .solve(line, List.of(new AppliedLoad(Place.atSupport("p"), Attachment.FREE_RUNNING, 100 * G)));

        assertThat(r.before()
                        .support("p")
                        .vector()
                        .minus(rest.support("p").vector())
                        .magnitude())
                .isLessThan(1e-6);
        assertThat(r.energy().hanging()).isNotZero();
        assertThat(Verifier.withDefaults().arrest(r).failures()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(longs = {0, 3, 5, 9, 11, 14, 20, 23, 27, 31, 42, 55, 60, 75, 84, 100, 112, 168, 228, 251})
    void randomLinesAreVerified(long seed) {
        ArrestCase c = RandomLines.of(seed);
        int number = (int) (seed % (c.line().spans() + 1));
        Support support = c.line().supports().get(number);
        Fall fall = below(c.fall(), support);
        EnergyBalance balance =
                EnergyBalance.withDefaults().withTemperature(c.temperature()).withSide(c.side());
        LoadingCurve curve = c.fall().fallers().get(0).connection().curve(c.side());
        try {
            ArrestResult r = balance.solve(c.line(), fall);
            assertThat(Verifier.withDefaults().arrest(r).failures())
                    .as("seed %s", seed)
                    .isEmpty();
        } catch (InvalidInputException e) {
            assertThat(e.getMessage()).as("seed %s", seed).contains("must activate above the installed tension");
        } catch (NoEquilibriumException e) {
            assertThat(e.getMessage()).as("seed %s", seed).contains("state the stiffness of the stop");
            assertThat(curve.stopStiffness()).isInfinite();
        }
    }

    /** The same workers at a support, standing so that their connections reach it. */
    private static Fall below(Fall fall, Support support) {
        Fall.Builder b = Fall.builder("fall").at(Place.atSupport(support.id()));
        for (Worker each : fall.fallers()) {
            double below = Math.min(0.5, 0.5 * each.connection().tautLength(0));
            b.faller(each.toBuilder(each.id())
                    .walkingLevel(support.position().z() - each.attachmentHeight() - below)
                    .build());
        }
        fall.hanging().forEach(h -> b.hanging(h.worker(), h.place()));
        return b.build();
    }

    @Test
    void aRigidStopOnARigidSupportIsRefusedInWords() {
        Connection rigid = Connection.lanyard(
                1.8,
                PersonalAbsorber.builder()
                        .clearanceForce(1500)
                        .maximumForce(1500)
                        .maximumExtension(0.3)
                        .build());
        assertThatThrownBy(() -> solve(line(Stiffness.rigid()), fall("p", rigid)))
                .isInstanceOf(NoEquilibriumException.class)
                .hasMessageContaining("state the stiffness of the stop");
    }

    @ParameterizedTest
    @CsvSource({"nowhere", "''", "A"})
    void anUnknownSupportIsAViolation(String id) {
        Lifeline line = line(Stiffness.rigid());
        assertThatThrownBy(() -> solve(line, fall(id, absorber())))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("fall.at.support")
                .hasMessageContaining("must be the id of a support");
        assertThatThrownBy(() -> line.spanOf(Place.atSupport(id)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("must be the id of a support of the line");
    }

    @Test
    void aPlaceKnowsWhatItIs() {
        Lifeline line = line(Stiffness.rigid());
        Place at = Place.atSupport("q");

        assertThat(at).isEqualTo(Place.atSupport("q")).hasSameHashCodeAs(Place.atSupport("q"));
        assertThat(at).isNotEqualTo(Place.of(3, 0)).isNotEqualTo(Place.atSupport("p"));
        assertThat(at).hasToString("support q");
        assertThat(line.spanOf(at)).isEqualTo(3);
        assertThat(line.stationOf(at)).isZero();
        assertThat(line.along(at)).isEqualTo(24);
        assertThat(line.spanOf(Place.atSupport("b"))).isEqualTo(3);
        assertThat(line.stationOf(Place.atSupport("b"))).isEqualTo(12);
        assertThat(line.along(Place.atSupport("b"))).isEqualTo(36);
        assertThat(line.supportOf(at)).isEqualTo(2);
        assertThatThrownBy(at::span).isInstanceOf(IllegalStateException.class).hasMessageContaining("support q");
        assertThatThrownBy(at::station).isInstanceOf(IllegalStateException.class);
        assertThatThrownBy(() -> line.supportOf(Place.of(1, 2))).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void bothSidesOfTheForceRangeAndBothTemperatures() {
        for (DeploymentForce side : DeploymentForce.values()) {
            for (double t : new double[] {-30, 60}) {
                ArrestResult r = EnergyBalance.withDefaults()
                        .withSide(side)
                        .withTemperature(t)
                        .solve(line(soft(1e5)), fall("b", absorber()));
                assertThat(r.lineLoad()).isLessThanOrEqualTo(side == DeploymentForce.MAXIMUM ? 6000.001 : 4000.001);
                assertThat(Verifier.withDefaults().arrest(r).failures()).isEmpty();
            }
        }
    }
}
