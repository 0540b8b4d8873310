package org.lifeline.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Point;
import org.lifeline.base.Refusal;
import org.lifeline.model.absorber.LoadingCurve;

/** Passages, stiffnesses, supports, installed states, obstructions, clearance rules, factors, places. */
class SmallValuesTest {
    private static final double NAN = Double.NaN;
    private static final double INFINITE = Double.POSITIVE_INFINITY;

    @Test
    void passages() {
        assertThat(Passage.free().kind()).isEqualTo(Passage.Kind.FREE);
        assertThat(Passage.free().friction()).isZero();
        assertThat(Passage.free()).hasToString("free");
        assertThat(Passage.clamped().kind()).isEqualTo(Passage.Kind.CLAMPED);
        assertThat(Passage.clamped().friction()).isInfinite();
        assertThat(Passage.clamped()).hasToString("clamped");
        assertThat(Passage.friction(0.12).kind()).isEqualTo(Passage.Kind.FRICTION);
        assertThat(Passage.friction(0.12).friction()).isEqualTo(0.12);
        assertThat(Passage.friction(0.12)).hasToString("friction 0.12");
        assertThat(Passage.friction(0)).isSameAs(Passage.free());
        assertThat(Passage.friction(2).friction()).isEqualTo(2);
        assertThat(Refusal.of(() -> Passage.friction(-0.1)))
                .containsExactly("friction: -0.1: must be a coefficient of friction from 0 to 2");
        assertThat(Refusal.paths(() -> Passage.friction(2.1))).containsExactly("friction");
        assertThat(Refusal.paths(() -> Passage.friction(NAN))).containsExactly("friction");
    }

    @Test
    void stiffnesses() {
        assertThat(Stiffness.rigid().isRigid()).isTrue();
        assertThat(Stiffness.alongX(3e5)).isEqualTo(new Stiffness(3e5, INFINITE, INFINITE));
        assertThat(Stiffness.rigid().withY(1)).isEqualTo(new Stiffness(INFINITE, 1, INFINITE));
        assertThat(Stiffness.rigid().withZ(2)).isEqualTo(new Stiffness(INFINITE, INFINITE, 2));
        assertThat(Stiffness.alongX(3).withX(4).withY(5).withZ(6)).isEqualTo(new Stiffness(4, 5, 6));
        assertThat(Stiffness.alongX(3e5).isRigid()).isFalse();
        assertThat(Stiffness.rigid().withY(1).isRigid()).isFalse();
        assertThat(Stiffness.rigid().withZ(1).isRigid()).isFalse();
        assertThat(Refusal.of(() -> new Stiffness(0, -1, NAN)))
                .containsExactly(
                        "x: 0.0 N/m: must be above zero (leave it out where the anchor is rigid)",
                        "y: -1.0 N/m: must be above zero (leave it out where the anchor is rigid)",
                        "z: NaN N/m: must be above zero (leave it out where the anchor is rigid)");
    }

    @Test
    void endSupports() {
        InlineAbsorber a = InlineAbsorber.of(LoadingCurve.spring(1e5));
        Support s = Support.end("north", Point.of(1, 2, 3))
                .withStiffness(Stiffness.alongX(3e5))
                .withInlineAbsorber(a)
                .withCapacity(45_000);
        assertThat(s.id()).isEqualTo("north");
        assertThat(s.isEnd()).isTrue();
        assertThat(s.position()).isEqualTo(Point.of(1, 2, 3));
        assertThat(s.passage()).isSameAs(Passage.clamped());
        assertThat(s.stiffness()).isEqualTo(Stiffness.alongX(3e5));
        assertThat(s.inlineAbsorber()).containsSame(a);
        assertThat(s.capacity()).hasValue(45_000);
        // Each change keeps the others, whatever their order.
        Support t = Support.end("north", Point.of(1, 2, 3))
                .withCapacity(45_000)
                .withInlineAbsorber(a)
                .withStiffness(Stiffness.alongX(3e5));
        assertThat(t.capacity()).hasValue(45_000);
        assertThat(t.inlineAbsorber()).containsSame(a);
        assertThat(t.stiffness()).isEqualTo(Stiffness.alongX(3e5));
    }

    @Test
    void intermediateSupports() {
        Support s = Support.intermediate("post", Point.of(1, 2, 3), Passage.friction(0.2));
        assertThat(s.isEnd()).isFalse();
        assertThat(s.passage().friction()).isEqualTo(0.2);
        assertThat(s.stiffness().isRigid()).isTrue();
        assertThat(s.inlineAbsorber()).isEmpty();
        assertThat(s.capacity()).isEmpty();
    }

    @Test
    void refusedSupports() {
        assertThat(Refusal.of(() -> Support.end(" ", Point.of(NAN, 0, 0))))
                .containsExactly(
                        "id: \" \": must not be blank",
                        "position: " + Point.of(NAN, 0, 0) + ": must be three finite numbers");
        assertThat(Refusal.paths(() -> Support.intermediate("", Point.of(0, INFINITE, 0), Passage.free())))
                .containsExactly("id", "position");
        assertThat(Refusal.of(() -> Support.intermediate("p", Point.of(0, 0, 0), Passage.free())
                        .withInlineAbsorber(InlineAbsorber.of(LoadingCurve.spring(1e5)))))
                .containsExactly("inlineAbsorber: given: only an end anchor can carry an in-line absorber");
        assertThat(Refusal.of(() -> Support.end("p", Point.of(0, 0, 0)).withCapacity(0)))
                .containsExactly("capacity: 0.0 N: must be a finite number above zero");
    }

    @Test
    void inlineAbsorbers() {
        LoadingCurve curve = LoadingCurve.through(
                List.of(new LoadingCurve.Corner(0, 8000), new LoadingCurve.Corner(0.8, 8000)), 8e6, 2.2e5);
        assertThat(InlineAbsorber.of(curve).curve()).isSameAs(curve);
        assertThat(InlineAbsorber.of(curve).initialStiffness()).isEqualTo(8e6);
    }

    @Test
    void installedStates() {
        Installed p = Installed.pretension(1500);
        assertThat(p.form()).isEqualTo(Installed.Form.PRETENSION);
        assertThat(p.value()).isEqualTo(1500);
        assertThat(p.span()).isEqualTo(1);
        assertThat(p.temperature()).isEqualTo(15);
        Installed h = Installed.horizontalTension(900).inSpan(3).atTemperature(-5);
        assertThat(h.form()).isEqualTo(Installed.Form.HORIZONTAL_TENSION);
        assertThat(h.span()).isEqualTo(3);
        assertThat(h.temperature()).isEqualTo(-5);
        assertThat(h.value()).isEqualTo(900);
        assertThat(Installed.initialSag(2, 0.3).span()).isEqualTo(2);
        assertThat(Installed.initialSag(2, 0.3).value()).isEqualTo(0.3);
        assertThat(Installed.initialSag(2, 0.3).form()).isEqualTo(Installed.Form.INITIAL_SAG);
        assertThat(Installed.unstretchedLength(36).form()).isEqualTo(Installed.Form.UNSTRETCHED_LENGTH);
        assertThat(Installed.unstretchedLength(36).atTemperature(20).inSpan(1).value())
                .isEqualTo(36);
    }

    @Test
    void refusedInstalledStates() {
        assertThat(Refusal.of(() -> Installed.pretension(0)))
                .containsExactly("pretension: 0.0 N: must be a finite number above zero");
        assertThat(Refusal.of(() -> Installed.horizontalTension(-1)))
                .containsExactly("horizontalTension: -1.0 N: must be a finite number above zero");
        assertThat(Refusal.of(() -> Installed.initialSag(0, NAN)))
                .containsExactly("initialSag: NaN m: must be a finite number above zero", "span: 0: must be 1 or more");
        assertThat(Refusal.of(() -> Installed.unstretchedLength(INFINITE)))
                .containsExactly("unstretchedLength: Infinity m: must be a finite number above zero");
        for (double bad : new double[] {-273.15, 1000, NAN}) {
            assertThat(Refusal.of(() -> Installed.pretension(1).atTemperature(bad)))
                    .containsExactly("temperature: " + bad + " °C: must lie between absolute zero and 1000 °C");
        }
        assertThat(Installed.pretension(1).atTemperature(-273).temperature()).isEqualTo(-273);
    }

    @Test
    void obstructions() {
        Obstruction o = new Obstruction(2, 5, 4);
        assertThat(o.isBelow(2)).isTrue();
        assertThat(o.isBelow(5)).isTrue();
        assertThat(o.isBelow(3.3)).isTrue();
        assertThat(o.isBelow(1.999)).isFalse();
        assertThat(o.isBelow(5.001)).isFalse();
        assertThat(new Obstruction(2, 2, 4).isBelow(2)).isTrue();
        assertThat(Refusal.of(() -> new Obstruction(5, 2, NAN)))
                .containsExactly("elevation: NaN m: must be a finite number", "to: 2.0 m: must not lie before from");
        assertThat(Refusal.paths(() -> new Obstruction(NAN, INFINITE, 0))).containsExactly("from", "to");
    }

    @Test
    void clearanceRules() {
        ClearanceRules c = ClearanceRules.commonPractice();
        assertThat(c).isEqualTo(new ClearanceRules(0.3, 0.6, List.of()));
        Obstruction o = new Obstruction(2, 5, 4);
        assertThat(c.withHarnessStretch(0.4).withMargin(1).withObstructions(List.of(o)))
                .isEqualTo(new ClearanceRules(0.4, 1, List.of(o)));
        assertThat(c.withMargin(0).withHarnessStretch(0)).isEqualTo(new ClearanceRules(0, 0, List.of()));
        assertThat(Refusal.of(() -> new ClearanceRules(-1, NAN, List.of())))
                .containsExactly(
                        "harnessStretch: -1.0 m: must be a finite number that is not negative",
                        "margin: NaN m: must be a finite number that is not negative");
    }

    @Test
    void modelFactors() {
        assertThat(ModelFactors.none()).isEqualTo(new ModelFactors(1, 1));
        assertThat(Refusal.of(() -> new ModelFactors(0, -1)))
                .containsExactly(
                        "force: 0.0: must be a finite number above zero",
                        "distance: -1.0: must be a finite number above zero");
    }

    /** A factor below 1 makes every criterion look better: never without a reason, never by more than half. */
    @Test
    void modelFactorsBelowOne() {
        assertThat(Refusal.of(() -> new ModelFactors(0.9, 1)))
                .containsExactly("reason: missing: must say why a factor is below 1");
        assertThat(Refusal.of(() -> new ModelFactors(1, 0.9, " ")))
                .containsExactly("reason: missing: must say why a factor is below 1");
        assertThat(Refusal.paths(() -> new ModelFactors(1e-300, 0.01, "tests"))).containsExactly("force", "distance");
        ModelFactors tested = new ModelFactors(0.9, 1, "series of drop tests");
        assertThat(tested.isBelowOne()).isTrue();
        assertThat(tested.reason()).isEqualTo("series of drop tests");
        assertThat(new ModelFactors(1.2, 0.95, "x").isBelowOne()).isTrue();
        assertThat(new ModelFactors(1.2, 1).isBelowOne()).isFalse();
        assertThat(ModelFactors.none().reason()).isEmpty();
    }

    @Test
    void places() {
        assertThat(Place.of(2, 6)).isEqualTo(Place.of(2, 6)).hasToString("span 2, station 6.0 m");
    }
}
