package org.lifeline.design.structure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.analysis.Method;
import org.lifeline.analysis.Statics;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Point;
import org.lifeline.base.Vector3;
import org.lifeline.design.envelope.ComputedCase;
import org.lifeline.design.envelope.Designs;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.model.Attachment;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.ModelFactors;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Post;
import org.lifeline.model.Support;

/** Loads of single arrests on a straight line of two spans: what is gathered, and what a result makes of it. */
@SuppressWarnings("NullAway") // Null is handed over to be refused, and what is there is taken as there.
class GatheredLoadsTest {
    private static final double E = 210e9;
    private static final double I = 1.8e-5;
    private static final double H = 1.5;
    private static final LifelineDesign DESIGN = design(post().build());
    private static final ArrestResult SECOND = arrest(DESIGN, Place.of(2, 4));

    private static Post.Builder post() {
        return Post.ofHeight(H).elasticModulus(E).secondMomentX(I).secondMomentY(2 * I);
    }

    private static LifelineDesign design(Post middle) {
        return LifelineDesign.builder("two spans")
                .line(Lifeline.builder()
                        .cable(Designs.line(1, Passage.free()).cable())
                        .endAnchor("a", Point.of(0, 0, 12.4))
                        .support(Support.intermediate("p", Point.of(10, 0, 12.4), Passage.free())
                                .withPost(middle))
                        .endAnchor("z", Point.of(20, 0, 12.4))
                        .pretension(1500)
                        .build())
                .worker(Designs.worker("A", Attachment.GRIPPED))
                .build();
    }

    private static ArrestResult arrest(LifelineDesign design, Place place) {
        return EnergyBalance.withDefaults()
                .solve(
                        design.line(),
                        Fall.builder("f")
                                .at(place)
                                .faller(design.workers().get(0))
                                .build());
    }

    private static ComputedCase computed(LifelineDesign design, ArrestResult r) {
        return new ComputedCase(Extremes.of(design, List.of(r)).all().get(0).fallCase(), r);
    }

    private static List<GoverningReaction> rows(LifelineDesign design, double[] angles, ArrestResult... arrests) {
        GoverningLoads loads = new GoverningLoads(design, angles);
        for (ArrestResult each : arrests) {
            loads.add(computed(design, each));
        }
        return loads.rows(Method.ENERGY_BALANCE);
    }

    private static SupportLoadsResult result(LifelineDesign design, List<GoverningReaction> rows) {
        return new SupportLoadsResult(design, new SupportLoadsResult.Asked(0.2, true, List.of()), rows, List.of());
    }

    private static GoverningReaction row(List<GoverningReaction> rows, String support, LoadEffect effect) {
        return find(rows, support, effect).orElseThrow();
    }

    private static Optional<GoverningReaction> find(List<GoverningReaction> rows, String support, LoadEffect effect) {
        return rows.stream()
                .filter(r -> r.support().id().equals(support) && r.effect() == effect)
                .findFirst();
    }

    // One arrest under an upright pull.

    @Test
    void oneArrestGivesTheForcesThatItHas() {
        List<GoverningReaction> rows = rows(DESIGN, new double[] {0}, SECOND);
        for (int i = 0; i < 3; i++) {
            Vector3 f = SECOND.supports().get(i).vector();
            String id = DESIGN.line().supports().get(i).id();
            assertThat(row(rows, id, LoadEffect.RESULTANT).value()).isEqualTo(f.magnitude(), within(1e-9));
            assertThat(row(rows, id, LoadEffect.RESULTANT).vector()).isEqualTo(f);
            assertThat(row(rows, id, LoadEffect.DOWN).value()).isEqualTo(-f.z(), within(1e-9));
        }
        assertThat(row(rows, "p", LoadEffect.SHEAR).value())
                .isEqualTo(SECOND.supports().get(1).vector().horizontal(), within(1e-9));
    }

    /** The line pulls its first anchor toward +x and down, never toward −x or up, and nothing pulls across. */
    @Test
    void effectsThatPullNowhereAreLeftOut() {
        List<GoverningReaction> rows = rows(DESIGN, new double[] {0}, SECOND);
        assertThat(find(rows, "a", LoadEffect.PLUS_X)).isPresent();
        assertThat(find(rows, "a", LoadEffect.MINUS_X)).isEmpty();
        assertThat(find(rows, "a", LoadEffect.UP)).isEmpty();
        assertThat(find(rows, "a", LoadEffect.PLUS_Y)).isEmpty();
        assertThat(find(rows, "a", LoadEffect.MINUS_Y)).isEmpty();
        assertThat(find(rows, "a", LoadEffect.SHEAR))
                .as("no post is stated there")
                .isEmpty();
        assertThat(find(rows, "z", LoadEffect.MINUS_X)).isPresent();
        assertThat(rows).allMatch(r -> r.value() > 0);
    }

    @Test
    void theModelFactorOnForceIsOnForcesAndMoments() {
        LifelineDesign factored = DESIGN.toBuilder()
                .modelFactors(new ModelFactors(1.3, 1, "test"))
                .build();
        List<GoverningReaction> plain = rows(DESIGN, new double[] {0.2}, SECOND);
        List<GoverningReaction> more = rows(factored, new double[] {0.2}, SECOND);
        assertThat(more).hasSameSizeAs(plain);
        for (int i = 0; i < plain.size(); i++) {
            assertThat(more.get(i).value())
                    .isEqualTo(
                            1.3 * plain.get(i).value(),
                            within(1e-9 * more.get(i).value()));
            assertThat(more.get(i).effect()).isEqualTo(plain.get(i).effect());
        }
    }

    /** Of two arrests each effect has the larger one, with the forces of that arrest on all supports. */
    @Test
    void theLargerOfTwoArrestsCountsWithItsOwnPartners() {
        ArrestResult first = arrest(DESIGN, Place.of(1, 3));
        List<GoverningReaction> rows = rows(DESIGN, new double[] {0}, first, SECOND);
        for (GoverningReaction each : rows) {
            int n = List.of("a", "p", "z").indexOf(each.support().id());
            double a = each.effect().of(each.support(), first.supports().get(n).vector());
            double b = each.effect().of(each.support(), SECOND.supports().get(n).vector());
            assertThat(each.value()).isEqualTo(Math.max(a, b), within(1e-9));
            ArrestResult larger = a > b ? first : SECOND;
            for (int i = 0; i < 3; i++) {
                assertThat(each.forces().get(i))
                        .isEqualTo(larger.supports().get(i).vector());
            }
        }
    }

    /** The same arrest again changes nothing: the first of equals stays, which is the upright pull. */
    @Test
    void theFirstOfEqualsStays() {
        List<GoverningReaction> once = rows(DESIGN, new double[] {0, 0.1, -0.1}, SECOND);
        List<GoverningReaction> twice = rows(DESIGN, new double[] {0, 0.1, -0.1}, SECOND, SECOND);
        assertThat(twice).hasSameSizeAs(once);
        for (int i = 0; i < once.size(); i++) {
            assertThat(twice.get(i).value()).isEqualTo(once.get(i).value());
            assertThat(twice.get(i).angle()).isEqualTo(once.get(i).angle());
        }
        // Between the other span's supports nothing turns: all angles are equal there.
        assertThat(row(once, "a", LoadEffect.RESULTANT).angle()).isZero();
    }

    @Test
    void aMethodThatWasNotComputedHasNoRows() {
        GoverningLoads loads = new GoverningLoads(DESIGN, new double[] {0});
        assertThat(loads.rows(Method.ENERGY_BALANCE)).isEmpty();
        loads.add(computed(DESIGN, SECOND));
        assertThat(loads.rows(Method.TRANSIENT)).isEmpty();
        assertThat(loads.rows(Method.ENERGY_BALANCE)).isNotEmpty();
    }

    // The pull across the line.

    @Test
    void withoutAnAngleNothingTurns() {
        assertThat(SidePull.forces(SECOND, 0))
                .isEqualTo(SECOND.supports().stream().map(s -> s.vector()).toList());
    }

    /** A straight line: to the left and to the right are mirror images in the upright plane of the line. */
    @ParameterizedTest
    @ValueSource(doubles = {0.05, 0.26, 1.0})
    void leftAndRightAreMirrorImages(double angle) {
        for (ArrestResult r : List.of(SECOND, arrest(DESIGN, Place.atSupport("p")))) {
            List<Vector3> left = SidePull.forces(r, angle);
            List<Vector3> right = SidePull.forces(r, -angle);
            for (int i = 0; i < 3; i++) {
                assertThat(right.get(i).x()).isEqualTo(left.get(i).x(), within(1e-9));
                assertThat(right.get(i).y()).isEqualTo(-left.get(i).y(), within(1e-9));
                assertThat(right.get(i).z()).isEqualTo(left.get(i).z(), within(1e-9));
            }
            // Looking along +x, left is +y.
            assertThat(left.get(1).y()).isPositive();
        }
    }

    /**
     * By hand: the loaded span turned by φ about its level chord takes the pull and its own cable with it: P sin φ and at most the
     * weight of the span across, and as much less down as 1 − cos φ says; along the line nothing changes.
     */
    @ParameterizedTest
    @ValueSource(doubles = {0.1, 0.3, 0.9})
    void theSumOfTheForcesIsThePullThatLeans(double angle) {
        double weight = DESIGN.line().weightPerLength() * 10.2;
        double p = SECOND.lineLoad();
        Vector3 change = Vector3.ZERO;
        List<Vector3> leaning = SidePull.forces(SECOND, angle);
        for (int i = 0; i < 3; i++) {
            change = change.plus(leaning.get(i).minus(SECOND.supports().get(i).vector()));
        }
        assertThat(change.x()).isEqualTo(0, within(1e-6));
        assertThat(change.y()).isBetween(p * Math.sin(angle), (p + weight) * Math.sin(angle));
        assertThat(change.z()).isBetween(p * (1 - Math.cos(angle)), (p + weight) * (1 - Math.cos(angle)));
        assertThat(leaning.get(0))
                .as("the other span keeps its forces")
                .isEqualTo(SECOND.supports().get(0).vector());
        // At the end anchor only the turned span pulls: the force keeps its magnitude.
        assertThat(leaning.get(2).magnitude())
                .isEqualTo(SECOND.supports().get(2).vector().magnitude(), within(1e-6));
    }

    // Results.

    /** The cantilever: F h³/(3 E I), twice as stiff along y. */
    @Test
    void theTopOfAPostBendsAsACantilever() {
        List<GoverningReaction> rows = rows(DESIGN, new double[] {0.3}, SECOND);
        Vector3 f = row(rows, "p", LoadEffect.SHEAR).vector();
        Vector3 bent = result(DESIGN, rows).deflection("p").orElseThrow();
        assertThat(bent.x()).isEqualTo(f.x() * H * H * H / (3 * E * I), within(1e-12));
        assertThat(bent.y()).isEqualTo(f.y() * H * H * H / (3 * E * 2 * I), within(1e-12));
        assertThat(bent.z()).isZero();
        assertThat(result(DESIGN, rows).deflection("a")).as("no post").isEmpty();
        assertThat(result(DESIGN, List.of()).deflection("p")).as("no load").isEmpty();
        LifelineDesign bare = design(Post.ofHeight(H).build());
        List<GoverningReaction> stiff = rows(bare, new double[] {0.3}, arrest(bare, Place.of(2, 4)));
        assertThat(result(bare, stiff).deflection("p")).as("no section").isEmpty();
    }

    @Test
    void theMomentOfARowIsThatOfItsForce() {
        List<GoverningReaction> rows = rows(DESIGN, new double[] {0.3}, SECOND);
        GoverningReaction r = row(rows, "p", LoadEffect.BASE_MOMENT);
        Vector3 m = r.moment().orElseThrow();
        assertThat(m.x()).isEqualTo(-H * r.vector().y(), within(1e-9));
        assertThat(m.y()).isEqualTo(H * r.vector().x(), within(1e-9));
        assertThat(r.value()).isEqualTo(H * r.vector().horizontal(), within(1e-9));
        assertThat(row(rows, "a", LoadEffect.RESULTANT).moment()).isEmpty();
        StatedFactor factor = new StatedFactor("ultimate", 1.5, "brief");
        assertThat(r.factored(factor)).isEqualTo(1.5 * r.value());
        assertThat(r.simultaneous()).isTrue();
        assertThat(r.method()).isEqualTo(Method.ENERGY_BALANCE);
        assertThat(r.fallCase().fall().place()).isEqualTo(Place.of(2, 4));
        assertThatThrownBy(() -> r.factored(null)).isInstanceOf(InvalidInputException.class);
    }

    /** Nobody on it: end anchors pulled by 1500 N, half the weight of a span upright on each side. */
    @Test
    void permanentLoadsAreThoseAtRest() {
        SupportLoadsResult r = result(DESIGN, List.of());
        List<Vector3> rest = r.permanent();
        double span = DESIGN.line().weightPerLength() * 10;
        assertThat(rest.get(0).magnitude()).isEqualTo(1500, within(1e-6));
        assertThat(rest.get(0).z()).isEqualTo(-span / 2, within(1e-2));
        assertThat(rest.get(1).z()).isEqualTo(-span, within(2e-2));
        assertThat(rest.get(1).horizontal()).isEqualTo(0, within(1e-6));
        assertThat(rest.get(2).x()).isEqualTo(-rest.get(0).x(), within(1e-6));
        assertThat(rest)
                .isEqualTo(Statics.withDefaults().solve(DESIGN.line(), List.of()).supports().stream()
                        .map(s -> s.vector())
                        .toList());
        assertThat(r.angle()).isEqualTo(0.2);
        assertThat(r.isAngleAssumed()).isTrue();
        assertThat(r.governing()).isEmpty();
        assertThat(r.design()).isSameAs(DESIGN);
    }

    /** Rows in the order of supports and effects; of both methods the larger, of equals that by energy balance. */
    @Test
    void ofBothMethodsTheLargerGoverns() {
        List<GoverningReaction> balance = rows(DESIGN, new double[] {0}, SECOND);
        List<GoverningReaction> other = rows(DESIGN, new double[] {0}, arrest(DESIGN, Place.of(1, 5)));
        SupportLoadsResult r =
                new SupportLoadsResult(DESIGN, new SupportLoadsResult.Asked(0, false, List.of()), balance, other);
        List<GoverningReaction> expected = new ArrayList<>();
        for (Support s : DESIGN.line().supports()) {
            for (LoadEffect e : LoadEffect.values()) {
                Optional<GoverningReaction> a = find(balance, s.id(), e);
                Optional<GoverningReaction> b = find(other, s.id(), e);
                boolean second = b.isPresent()
                        && (a.isEmpty() || b.get().value() > a.get().value());
                (second ? b : a).ifPresent(expected::add);
                assertThat(r.byEnergyBalance(s.id(), e)).isEqualTo(a);
            }
        }
        assertThat(r.governing()).isEqualTo(expected);
        SupportLoadsResult same = new SupportLoadsResult(
                DESIGN,
                new SupportLoadsResult.Asked(0, false, List.of()),
                balance,
                rows(DESIGN, new double[] {0}, SECOND));
        assertThat(same.governing()).isEqualTo(balance);
    }

    // Warnings.

    @Test
    void aPostIsWarnedOfFromWhereItYields() {
        ArrestResult upright = SECOND;
        double moment = row(rows(DESIGN, new double[] {0.3}, upright), "p", LoadEffect.BASE_MOMENT)
                        .vector()
                        .x()
                * H;
        double across = row(rows(DESIGN, new double[] {0.3}, upright), "p", LoadEffect.BASE_MOMENT)
                        .vector()
                        .y()
                * H;
        for (double factor : new double[] {1.001, 0.999}) {
            LifelineDesign d = design(post().momentOfResistanceX(2 * factor * Math.abs(moment))
                    .momentOfResistanceY(2 * factor * Math.abs(across))
                    .build());
            SupportLoadsResult r = result(d, rows(d, new double[] {0.3}, upright));
            if (factor > 1) {
                assertThat(r.warnings()).isEmpty();
            } else {
                assertThat(r.warnings()).singleElement().satisfies(w -> {
                    assertThat(w.support()).isEqualTo("p");
                    assertThat(w.share()).isEqualTo(1 / 0.999, within(1e-6));
                    assertThat(w.text()).contains("it yields");
                });
            }
        }
    }

    @Test
    void aResistanceInOneDirectionOnlyIsSaid() {
        for (Post p : List.of(
                post().momentOfResistanceX(1e9).build(),
                post().momentOfResistanceY(1e9).build())) {
            assertThat(result(design(p), List.of()).warnings()).singleElement().satisfies(w -> {
                assertThat(w.text()).contains("for one direction only");
                assertThat(w.share()).isNaN();
            });
        }
        assertThat(result(DESIGN, List.of()).warnings()).isEmpty();
    }

    @Test
    void whatIsMissingIsNamed() {
        SupportLoadsResult r = result(DESIGN, List.of());
        assertThatThrownBy(() -> r.governing(null, LoadEffect.UP)).hasMessage("support: null: must be given");
        assertThatThrownBy(() -> r.governing("a", null)).hasMessage("effect: null: must be given");
        assertThatThrownBy(() -> r.byEnergyBalance(null, LoadEffect.UP)).hasMessage("support: null: must be given");
        assertThatThrownBy(() -> r.deflection(null)).hasMessage("support: null: must be given");
        assertThatThrownBy(() -> SidePull.forces(null, 0)).hasMessage("arrest: null: must be given");
        assertThatThrownBy(() -> SupportLoads.withDefaults().solve(null)).hasMessage("assessment: null: must be given");
        assertThatThrownBy(() -> SupportLoads.withDefaults().withFactors(null))
                .hasMessage("value: null: must be given");
    }
}
