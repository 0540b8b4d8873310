package org.lifeline.internal.path;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.base.Point;
import org.lifeline.internal.line.Equilibrium;
import org.lifeline.internal.line.LineEnergy;
import org.lifeline.model.Passage;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;

/** What a small line says of itself, where it can be worked out beside it. */
class LineModelAnswersTest {
    private static LineModel soft(double stiffness, Passage passage) {
        List<Support> s = new ArrayList<>(SmallLines.supports(passage, 2));
        s.set(0, s.get(0).withStiffness(Stiffness.alongX(stiffness)));
        return new LineModel(SmallLines.line(s, 0.4));
    }

    /** A copy has the loads and the state of what it is copied from, and neither moves the other from then on. */
    @Test
    void aCopyGoesItsOwnWay() {
        LineModel a = SmallLines.model(Passage.friction(0.2), 2);
        LineModel.Load load = a.hook(0, 4, true);
        a.hang(load, 1000);
        LineModel b = a.copy();
        assertThat(b.line()).isSameAs(a.line());
        assertThat(b.loads()).hasSize(1);
        LineModel.Load same = b.loads().get(0);
        assertThat(same).isNotSameAs(load);
        assertThat(b.position(same)).isEqualTo(a.position(load));
        assertThat(b.materialPoint(same)).isEqualTo(a.materialPoint(load));
        assertThat(b.convergence()).isEqualTo(a.convergence());
        assertThat(b.energy()).isEqualTo(a.energy());
        Point before = a.position(load);
        b.hang(same, 3000);
        b.hang(b.hook(1, 5, true), 500);
        assertThat(a.position(load)).isEqualTo(before);
        assertThat(a.loads()).hasSize(1);
        assertThat(b.loads()).hasSize(2);
        a.hang(load, 3000);
        a.hang(a.hook(1, 5, true), 500);
        assertThat(a.position(load).distance(b.position(same))).isLessThan(1e-9);
        assertThat(a.slip(1)).isCloseTo(b.slip(1), within(1e-12));
    }

    /** An anchor with a spring goes by the force it gets more than as installed, over its stiffness. */
    @Test
    void aSoftAnchorMovesByItsSpring() {
        LineModel m = soft(1e5, Passage.friction(0.1));
        assertThat(m.displacement(0).magnitude()).isCloseTo(0, within(1e-12));
        double installed = m.reaction(0).x();
        m.hang(m.hook(0, 5, true), 2000);
        assertThat(m.displacement(0).x()).isCloseTo((m.reaction(0).x() - installed) / 1e5, within(1e-9));
        assertThat(m.support(0).x()).isEqualTo(m.displacement(0).x());
        assertThat(m.displacement(0).x()).isPositive();
    }

    /** The free body of the whole line: anchors carry the weight of the cable and of what hangs on it, and nothing sideways. */
    @Test
    void theAnchorsCarryAllThatHangs() {
        LineModel m = soft(1e5, Passage.friction(0.1));
        m.hang(m.hook(0, 5, true), 2000);
        m.hang(m.hook(1, 3, true), 700);
        m.hang(m.hookAtSupport(2), 400);
        double x = 0;
        double z = 0;
        for (int i = 0; i < 3; i++) {
            x += m.reaction(i).x();
            z += m.reaction(i).z();
        }
        double cable = m.line().gravity() * 0.4 * m.installedLength();
        assertThat(x).isCloseTo(0, within(1e-6));
        assertThat(z).isCloseTo(-2000 - 700 - 400 - cable, within(1e-6));
    }

    /** A load on an anchor is where the anchor is, at either end and between. */
    @Test
    void aLoadOnAnAnchorIsWhereTheAnchorIs() {
        for (int support = 0; support < 3; support++) {
            LineModel m = soft(1e5, Passage.free());
            m.hang(m.hook(0, 5, true), 2000);
            LineModel.Load load = m.hookAtSupport(support);
            assertThat(m.materialPoint(load)).isEqualTo(m.support(support));
            m.hang(load, 300);
            assertThat(m.position(load)).isEqualTo(m.support(support));
            assertThat(m.materialPoint(load)).isEqualTo(m.support(support));
            assertThat(m.energyOf(load)).isCloseTo(300 * (m.support(support).z() - 10), within(1e-9));
        }
    }

    /** An absorber between an anchor and the cable has drawn out: what is hooked on to the anchor is there, not at the cable. */
    @Test
    void aLoadOnAnAnchorIsOnItsSideOfTheAbsorber() {
        List<Support> s = new ArrayList<>(SmallLines.supports(Passage.free(), 2));
        s.set(0, s.get(0).withInlineAbsorber(SmallLines.absorber()));
        LineModel m = new LineModel(SmallLines.line(s, 0.4));
        m.hang(m.hook(0, 5, true), 9000);
        assertThat(m.extension(0)).isGreaterThan(0.05);
        assertThat(m.pieces(0).get(0).start().distance(m.support(0))).isGreaterThan(0.05);
        LineModel.Load load = m.hookAtSupport(0);
        assertThat(m.materialPoint(load)).isEqualTo(m.support(0));
        m.hang(load, 800);
        assertThat(m.materialPoint(load)).isEqualTo(m.support(0));
        assertThat(m.position(load)).isEqualTo(m.support(0));
    }

    @Test
    void aLoadOfNoWeightHasNoEnergyAndOneThatHangsItsOwn() {
        LineModel m = SmallLines.model(Passage.clamped(), 2);
        LineModel.Load load = m.hook(0, 5, true);
        assertThat(m.energyOf(load)).isZero();
        Point hooked = m.materialPoint(load);
        assertThat(hooked.x()).isCloseTo(5, within(1e-9));
        m.hang(load, 1500);
        double height = m.position(load).z() - 10;
        assertThat(height).isNegative();
        assertThat(m.energyOf(load)).isCloseTo(1500 * height, within(1e-8));
        assertThat(m.energy().hanging()).isCloseTo(1500 * height, within(1e-8));
    }

    /** Strain energy of a taut span of hardly any weight: ½ T²/EA · l₀ for each. */
    @Test
    void theEnergyIsThatOfTheParts() {
        LineModel m = new LineModel(SmallLines.line(SmallLines.supports(Passage.free(), 2), 0.01));
        LineEnergy e = m.energy();
        double strain = 0.5 * SmallLines.TENSION * SmallLines.TENSION / SmallLines.EA * m.installedLength();
        assertThat(e.strain()).isCloseTo(strain, within(1e-3 * strain));
        assertThat(e.hanging()).isZero();
        assertThat(e.springs()).isZero();
        assertThat(e.inlineAbsorbers()).isZero();
    }

    /** An absorber as installed stands at pretension over its stiffness; later at tension over it, and gives it all back. */
    @Test
    void anAbsorberBelowItsForceIsASpring() {
        List<Support> s = new ArrayList<>(SmallLines.supports(Passage.friction(0.1), 2));
        s.set(2, s.get(2).withInlineAbsorber(SmallLines.absorber()));
        LineModel m = new LineModel(SmallLines.line(s, 0.4));
        assertThat(m.extension(0)).isZero();
        assertThat(m.installedExtension(0)).isZero();
        double installed = m.pieces(1).get(0).endTension().magnitude() / 8e6;
        assertThat(m.installedExtension(1)).isCloseTo(installed, within(1e-12));
        assertThat(m.extension(1)).isCloseTo(installed, within(1e-12));
        m.hang(m.hook(1, 5, true), 600);
        double tension = m.pieces(1).get(1).endTension().magnitude();
        assertThat(tension).isGreaterThan(2000);
        assertThat(m.extension(1)).isCloseTo(tension / 8e6, within(1e-12));
        assertThat(m.installedExtension(1)).isCloseTo(installed, within(1e-12));
        assertThat(m.yieldedExtension(1)).isZero();
    }

    /** Before anything is solved the residual of the state is that of its equations; later that of the last solve. */
    @Test
    void howTheSearchesWentIsKept() {
        LineModel m = SmallLines.model(Passage.friction(0.2), 2);
        int installed = m.convergence().iterations();
        assertThat(m.convergence().residual()).isLessThan(Equilibrium.CONVERGED);
        assertThat(m.convergence().tolerance()).isEqualTo(Equilibrium.CONVERGED);
        m.hang(m.hook(0, 4, true), 1000);
        int one = m.convergence().iterations();
        assertThat(one).isGreaterThan(installed);
        m.bringTo(40);
        assertThat(m.convergence().iterations()).isGreaterThan(one);
        assertThat(m.convergence().residual()).isBetween(0.0, Equilibrium.CONVERGED);
    }

    /** A failure names the anchor that was pulled more than four tenths of the way to the next one. */
    @Test
    void aFailureNamesTheAnchorThatGaveWay() {
        LineModel soft = soft(100, Passage.clamped());
        soft.hang(soft.hook(0, 5, true), 6000);
        assertThat(soft.displacement(0).magnitude()).isGreaterThan(4);
        Equilibrium e = new Equilibrium(soft.system(), soft.work());
        e.iterations = 7;
        int before = soft.convergence().iterations();
        NoEquilibriumException failure = soft.failure("line", LineModel.NOTHING_REACHED, e);
        assertThat(failure).hasMessageContaining("anchor s0 has been pulled").hasMessageContaining("too soft");
        assertThat(failure.convergence().iterations()).isEqualTo(before + 7);
        LineModel stiff = soft(1e5, Passage.clamped());
        stiff.hang(stiff.hook(0, 5, true), 6000);
        assertThat(stiff.failure("line", LineModel.NOTHING_REACHED, e).getMessage())
                .doesNotContain("has been pulled");
    }

    @Test
    void theLoadsCannotBeChangedFromOutside() {
        LineModel m = SmallLines.model(Passage.free(), 2);
        LineModel.Load load = m.hook(0, 5, true);
        assertThat(m.loads()).containsExactly(load);
        assertThatThrownBy(() -> m.loads().clear()).isInstanceOf(UnsupportedOperationException.class);
    }

    /** A load that runs freely stays in its span on a level line; a heavy one hangs in the middle of it. */
    @Test
    void aRunningLoadComesToTheMiddleOfALevelSpan() {
        LineModel m = SmallLines.model(Passage.clamped(), 2);
        LineModel.Load load = m.hook(1, 2, false);
        m.hang(load, 900);
        assertThat(m.restsOn(load)).isEqualTo(-1);
        assertThat(m.position(load).x()).isCloseTo(15, within(1e-6));
        assertThat(m.position(load, m.pieces(1))).isEqualTo(m.position(load));
        assertThat(m.pointAtStation(1, 5).distance(m.position(load))).isLessThan(1e-5);
        assertThat(m.bare().loads).isZero();
        assertThat(m.installed().slip[1]).isZero();
    }

    /** Cable has run out of the second span: what grips holds the point that hung there, what runs is at the lowest one. */
    @Test
    void aGripIsOnThePointThatHungThereAndARunningLoadAtTheLowest() {
        LineModel m = SmallLines.model(Passage.free(), 2);
        m.hang(m.hook(0, 5, true), 5000);
        double ran = m.slip(1);
        assertThat(Math.abs(ran)).isGreaterThan(0.01);
        LineModel.Load running = m.hook(1, 4, false);
        assertThat(m.materialPoint(running).x()).isCloseTo(15, within(1e-6));
        LineModel.Load gripped = m.hook(1, 4, true);
        double before = 4 / SmallLines.SPAN;
        double left = (before - ran / SmallLines.SPAN) / (1 - ran / SmallLines.SPAN);
        assertThat(m.materialPoint(gripped).x())
                .as("a taut cable lies over its span in proportion")
                .isCloseTo(10 + left * SmallLines.SPAN, within(1e-3 * ran));
    }

    /** What hangs at the first support is at it, and so is the cable that begins a span. */
    @Test
    void aSupportIsWhereASpanBegins() {
        LineModel m = SmallLines.model(Passage.free(), 3);
        for (int i = 0; i <= 3; i++) {
            assertThat(m.materialPoint(m.hookAtSupport(i))).isEqualTo(m.support(i));
        }
        double length = 0;
        for (int i = 0; i < 3; i++) {
            int span = i;
            assertThat(m.installedPoint(length)).hasValueSatisfying(p -> {
                assertThat(p.span()).isEqualTo(span);
                assertThat(p.point().distance(m.support(span))).isLessThan(1e-12);
            });
            length += m.bare().length[i];
        }
    }
}
