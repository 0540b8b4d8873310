package org.lifeline.internal.path;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.internal.line.Equilibrium;
import org.lifeline.internal.line.LineEnergies;
import org.lifeline.internal.line.LineState;
import org.lifeline.model.Passage;

/** The force under which a load hangs at a height, against the height at which it hangs under a force. */
class DescentControlTest {
    private static PathOfALoad loaded(Passage passage, double force) {
        return PathOfALoad.gripped(SmallLines.model(passage, 2), 0, 4).to(force);
    }

    private static double height(PathOfALoad p, LineState s) {
        return new LineEnergies(p.model.system()).height(s, p.load);
    }

    /** There and back: from a force to its height, and from the height to the force, up and down from the start. */
    @ParameterizedTest
    @ValueSource(doubles = {0.7, 0.9, 1.1, 1.4})
    void theForceThatBelongsToAHeight(double share) {
        for (Passage passage : List.of(Passage.free(), Passage.clamped())) {
            double force = 3000;
            PathOfALoad want = loaded(passage, share * force);
            PathOfALoad p = loaded(passage, force);
            DescentControl control = new DescentControl(p.model.system(), p.beside, p.load);
            LineState s = p.now().state.copy();
            double height = height(want, want.now().state);
            assertThat(control.solve(s, height)).isTrue();
            assertThat(s.force[p.load]).isCloseTo(share * force, within(1e-8 * force));
            assertThat(height(p, s)).isCloseTo(height, within(1e-12));
            assertThat(s.tension[0]).isCloseTo(want.now().state.tension[0], within(1e-5));
            assertThat(s.tension[3]).isCloseTo(want.now().state.tension[3], within(1e-5));
            assertThat(s.slip[1]).isCloseTo(want.now().state.slip[1], within(1e-9));
            assertThat(p.beside.residual).isLessThan(Equilibrium.CONVERGED);
        }
    }

    /** Newton's method doubles the digits: from a tenth off, four or five steps reach rounding, from next to it two. */
    @Test
    void theDigitsDoubleFromStepToStep() {
        PathOfALoad p = loaded(Passage.free(), 3000);
        DescentControl control = new DescentControl(p.model.system(), p.beside, p.load);
        double height = height(p, p.now().state);
        int[] most = {1, 3, 4, 5};
        double[] lower = {0, 1e-5, 0.01, 0.1};
        for (int k = 0; k < most.length; k++) {
            LineState s = p.now().state.copy();
            p.beside.iterations = 0;
            assertThat(control.solve(s, height - lower[k])).isTrue();
            assertThat(p.beside.iterations).as("%s m lower", lower[k]).isBetween(1, most[k]);
        }
    }

    /** A state that is no equilibrium at first: the force and the tensions are found together. */
    @Test
    void fromAStateThatIsNotInEquilibrium() {
        PathOfALoad p = loaded(Passage.free(), 3000);
        double height = height(p, p.now().state);
        LineState s = p.now().state.copy();
        for (int i = 0; i < s.tension.length; i++) {
            s.tension[i] *= 1.02;
        }
        s.force[p.load] *= 0.9;
        DescentControl control = new DescentControl(p.model.system(), p.beside, p.load);
        assertThat(control.solve(s, height)).isTrue();
        assertThat(s.force[p.load]).isCloseTo(3000, within(1e-5));
        assertThat(p.beside.iterations).isLessThanOrEqualTo(8);
    }

    /** The tangent of the force over the descent by two heights close together, against that of the path. */
    @Test
    void theForceFollowsTheStiffnessOfTheLine() {
        PathOfALoad p = loaded(Passage.free(), 3000);
        DescentControl control = new DescentControl(p.model.system(), p.beside, p.load);
        double height = height(p, p.now().state);
        LineState up = p.now().state.copy();
        LineState down = p.now().state.copy();
        assertThat(control.solve(up, height + 1e-4)).isTrue();
        assertThat(control.solve(down, height - 1e-4)).isTrue();
        double stiffness = (down.force[p.load] - up.force[p.load]) / 2e-4;
        p.path.slope(p.now(), PathOfALoad.descent(1));
        assertThat(stiffness).isCloseTo(1 / p.now().descentRate, within(1e-5 * stiffness));
    }

    /** A cable only pulls: no force from above holds a load higher than the cable hangs by itself. */
    @Test
    void aLoadDoesNotHangHigherThanTheBareLine() {
        PathOfALoad p = loaded(Passage.free(), 3000);
        DescentControl control = new DescentControl(p.model.system(), p.beside, p.load);
        LineState s = p.now().state.copy();
        assertThat(control.solve(s, 0.5)).isFalse();
    }

    /** A step of more than half the force is not believed, up or down: the descent is to be taken in shorter drops. */
    @Test
    void aHeightFarAwayIsNotSoughtInOneGo() {
        PathOfALoad p = loaded(Passage.free(), 3000);
        DescentControl control = new DescentControl(p.model.system(), p.beside, p.load);
        double height = height(p, p.now().state);
        p.path.slope(p.now(), PathOfALoad.descent(1));
        double half = 1500 * p.now().descentRate;
        for (double drop : new double[] {1.01 * half, -1.01 * half}) {
            p.beside.iterations = 0;
            assertThat(control.solve(p.now().state.copy(), height - drop)).isFalse();
            assertThat(p.beside.iterations).isEqualTo(1);
        }
        LineState s = p.now().state.copy();
        assertThat(control.solve(s, height - 0.99 * half)).isTrue();
        assertThat(s.force[p.load]).isGreaterThan(4500);
    }

    @Test
    void aLineWithoutALoadHasNoForceToChange() {
        PathOfALoad p = PathOfALoad.gripped(SmallLines.model(Passage.free(), 2), 0, 4);
        DescentControl control = new DescentControl(p.model.system(), p.beside, p.load);
        LineState s = p.now().state.copy();
        assertThat(control.solve(s, height(p, s) - 0.01)).isFalse();
        assertThat(p.beside.iterations).as("the first step shows it").isEqualTo(1);
        assertThat(p.beside.assembly.assembled).as("nothing is built on it").isEqualTo(1);
    }

    /** Cable that has all run out of a span is no state of a line. */
    @Test
    void aSpanWithoutCableIsRefused() {
        PathOfALoad p = loaded(Passage.free(), 3000);
        DescentControl control = new DescentControl(p.model.system(), p.beside, p.load);
        LineState s = p.now().state.copy();
        s.slip[1] = 11;
        assertThat(control.solve(s, height(p, p.now().state))).isFalse();
        assertThat(p.beside.iterations).as("nothing to iterate on").isZero();
        assertThat(p.beside.assembly.factored).as("no tangent of it").isZero();
    }

    /** A state of the load path that was moved to another height has another tangent, though it is the same object. */
    @Test
    void theTangentOfTheStateBeforeIsForgotten() {
        PathOfALoad p = loaded(Passage.free(), 3000);
        LineState s = p.now().state.copy();
        assertThat(p.beside.newton(s)).isTrue();
        assertThat(p.beside.factorAt(s)).isTrue();
        DescentControl control = new DescentControl(p.model.system(), p.beside, p.load);
        assertThat(control.solve(s, height(p, s) - 0.1)).isTrue();
        assertThat(p.beside.factorAt(s)).isTrue();
        Equilibrium anew = new Equilibrium(p.model.system(), p.model.work());
        assertThat(anew.factorAt(s.copy())).isTrue();
        double[] a = new double[p.model.system().unknowns.count()];
        a[0] = 1;
        double[] b = a.clone();
        p.beside.assembly.equations.matrix.solve(a);
        anew.assembly.equations.matrix.solve(b);
        assertThat(a[0]).isCloseTo(b[0], within(1e-9 * Math.abs(b[0])));
    }

    /** Difference quotients that are off cost steps: over sixty heights beside three forces, near and far, as many as these. */
    @ParameterizedTest
    @CsvSource({"30, 75", "3000, 91", "30000, 95"})
    void fewStepsLeadToAHeight(double force, int most) {
        PathOfALoad p = loaded(Passage.free(), force);
        DescentControl control = new DescentControl(p.model.system(), p.beside, p.load);
        double height = height(p, p.now().state);
        p.path.slope(p.now(), PathOfALoad.descent(1));
        double half = 0.5 * force * p.now().descentRate;
        p.beside.iterations = 0;
        for (double share = -0.75; share < 0.8; share += 0.1) {
            assertThat(control.solve(p.now().state.copy(), height - share * half))
                    .isTrue();
            assertThat(control.solve(p.now().state.copy(), height - 1e-4 * share * half))
                    .isTrue();
        }
        assertThat(p.beside.iterations).isLessThanOrEqualTo(most);
    }
}
