package org.lifeline.internal.path;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.lifeline.internal.line.LineState;
import org.lifeline.internal.line.LineSystem;
import org.lifeline.internal.line.LoadSlot;
import org.lifeline.model.Passage;

/** Energy of a point, and work and heat of a step and of a jump, against sums and integrals by hand. */
class PathEnergyStepTest {
    private static final double SCALE = 300;
    private static final PathCoordinate W = new PathCoordinate(SCALE);
    private static final LoadSlot[] SLOTS = {new LoadSlot(0, true, 3), new LoadSlot(0, true, 7)};

    private static LineSystem system(Passage passage) {
        return SmallLines.system(passage, 2, SLOTS);
    }

    private static PathEnergy energy(LineSystem sys, boolean followed) {
        // Supports stand at 10 m.
        return new PathEnergy(sys, 1, followed, W, new PathEnergy.Datum(9, 40));
    }

    /**
     * Two loads on a weightless cable that starts at 0.8/0.6 downward with 1500 N: straight pieces whose slopes the loads
     * change. The one that grows is the second; the first one is lifted or lowered by it.
     */
    @Test
    void theEnergyOfAPointIsWhatIsHeldAndWhatHangs() {
        LineSystem sys = system(Passage.clamped());
        LineState s = new LineState(2, 2);
        double[] t = {1200, 0, -900, 1200, 0, 500};
        System.arraycopy(t, 0, s.tension, 0, t.length);
        s.coordinate[0] = 3;
        s.coordinate[1] = 7;
        s.active[0] = true;
        s.active[1] = true;
        s.force[0] = 400;
        s.force[1] = 1000;
        double ea = SmallLines.EA;
        double first = 1500;
        double second = Math.hypot(1200, -500);
        double third = Math.hypot(1200, 500);
        double length = sys.length[0];
        double heightOne = 3 * (1 + first / ea) * -900 / first;
        double heightTwo = heightOne + 4 * (1 + second / ea) * -500 / second;
        double strain =
                (first * first * 3 + second * second * 4 + third * third * (length - 7 + sys.length[1])) / (2 * ea);
        PathPoint p = new PathPoint(sys, true);
        p.state.set(s);
        PathEnergy energy = energy(sys, true);
        energy.find(p);
        assertThat(p.descent).isCloseTo(9 - 10 - heightTwo, within(1e-12));
        assertThat(energy.height(p.descent)).isCloseTo(heightTwo, within(1e-12));
        assertThat(p.energy).isCloseTo(strain + 400 * heightOne - 40, within(1e-9));
        assertThat(p.energySize).isCloseTo(strain + 400 * -heightOne, within(1e-9));
        assertThat(PathEnergy.taken(p)).isEqualTo(p.energy + p.frictionHeat);
        p.frictionHeat = 5;
        assertThat(PathEnergy.taken(p)).isEqualTo(p.energy + 5);
    }

    /** A point at which P = P₀ (4 w³ + 3 w), the descent is 0.2 w, the post's force 500 + 100 w and its slip −0.01 w. */
    private static PathPoint at(LineSystem sys, double value) {
        PathPoint p = new PathPoint(sys, true);
        p.value = value;
        p.w = W.w(value);
        double perW = W.perW(p);
        p.descent = 0.2 * p.w;
        p.descentRate = 0.2 / perW;
        p.slipForce[1] = 500 + 100 * p.w;
        p.slipForceRate[1] = 100 / perW;
        p.state.slip[1] = -0.01 * p.w;
        p.slipRate[1] = -0.01 / perW;
        p.state.thermal = 1.25;
        p.state.passage[1] = LineState.RUNS_ON;
        p.hasTangent = true;
        return p;
    }

    private static double work(PathPoint from, PathPoint to) {
        double a = from.w * from.w;
        double b = to.w * to.w;
        return 0.2 * SCALE * (b * b - a * a + 1.5 * (b - a));
    }

    private static double heat(PathPoint from, PathPoint to) {
        return 1.25 * 0.01 * (500 * (to.w - from.w) + 50 * (to.w * to.w - from.w * from.w));
    }

    @Test
    void workAndHeatOfAStepAreTheirIntegrals() {
        LineSystem sys = system(Passage.friction(0.2));
        for (double thirdAt : new double[] {Double.NaN, 100, 260, 2500}) {
            PathPoint from = at(sys, 200);
            PathPoint to = at(sys, 900);
            PathPoint third = Double.isNaN(thirdAt) ? PathPoint.NONE : at(sys, thirdAt);
            from.loadWork = 7;
            from.frictionHeat = 3;
            energy(sys, true).accumulate(from, to, third);
            assertThat(to.loadWork).as("third at %s", thirdAt).isCloseTo(7 + work(from, to), within(1e-9));
            assertThat(to.frictionHeat).as("third at %s", thirdAt).isCloseTo(3 + heat(from, to), within(1e-9));
            boolean near = Double.isNaN(thirdAt) || thirdAt == 260;
            assertThat(to.order)
                    .as("a third point within the step is of no use")
                    .isEqualTo(near ? PathQuadrature.ORDER_OF_TWO : PathQuadrature.ORDER_OF_THREE);
        }
    }

    /** A point with other modes, or without rates, is another path: what stands in it must not count. */
    @Test
    void aThirdPointOfAnotherPathIsNotUsed() {
        LineSystem sys = system(Passage.friction(0.2));
        for (int kind = 0; kind < 3; kind++) {
            PathPoint from = at(sys, 200);
            PathPoint to = at(sys, 900);
            PathPoint third = at(sys, 2500);
            third.descent = 77;
            third.slipForce[1] = -1e5;
            third.hasTangent = kind != 0;
            third.state.passage[1] = kind == 1 ? LineState.STUCK : LineState.RUNS_ON;
            if (kind == 2) {
                to.state.passage[1] = LineState.STUCK;
                third.state.passage[1] = LineState.RUNS_ON;
            }
            energy(sys, true).accumulate(from, to, third);
            assertThat(to.order).as("kind %d", kind).isEqualTo(PathQuadrature.ORDER_OF_TWO);
            assertThat(to.loadWork).as("kind %d", kind).isCloseTo(work(from, to), within(1e-9));
            assertThat(to.frictionHeat).as("kind %d", kind).isCloseTo(heat(from, to), within(1e-9));
        }
    }

    @Test
    void withoutFrictionSlipOrAWayToFollowThereIsNoHeat() {
        LineSystem free = system(Passage.free());
        PathPoint from = at(free, 200);
        PathPoint to = at(free, 900);
        energy(free, true).accumulate(from, to, PathPoint.NONE);
        assertThat(to.frictionHeat).isZero();
        assertThat(to.loadWork).isCloseTo(work(from, to), within(1e-9));
        LineSystem rough = system(Passage.friction(0.2));
        PathPoint held = at(rough, 900);
        held.state.slip[1] = from.state.slip[1];
        energy(rough, true).accumulate(at(rough, 200), held, PathPoint.NONE);
        assertThat(held.frictionHeat).isZero();
        PathPoint jumped = at(rough, 900);
        from.loadWork = 7;
        from.frictionHeat = 3;
        energy(rough, false).accumulate(from, jumped, PathPoint.NONE);
        assertThat(jumped.loadWork).as("only carried on").isEqualTo(7);
        assertThat(jumped.frictionHeat).isEqualTo(3);
    }

    /** Both ends of a jump count half: (1000 + 800)/2 N through 0.3 m; and half the slip against either difference of T. */
    @Test
    void aJumpTakesTheMeanOfItsEnds() {
        double ea = SmallLines.EA;
        for (double friction : new double[] {0.2, 0}) {
            LineSystem sys = system(friction > 0 ? Passage.friction(friction) : Passage.free());
            LineState before = tensions(2000, 1400);
            before.force[1] = 1000;
            before.slip[1] = 0.05;
            PathPoint to = new PathPoint(sys, true);
            to.state.set(tensions(1500, 1700));
            to.state.slip[1] = 0.08;
            to.state.thermal = 1.25;
            to.value = 800;
            to.loadWork = 10;
            to.frictionHeat = 2;
            energy(sys, true).addJump(before, to, 0.3);
            assertThat(to.loadWork).isCloseTo(10 + 270, within(1e-9));
            double was = 1400 - 2000 + (1400.0 * 1400 - 2000.0 * 2000) / (2 * ea);
            double is = 1700 - 1500 + (1700.0 * 1700 - 1500.0 * 1500) / (2 * ea);
            double heat = friction > 0 ? -1.25 * 0.03 * 0.5 * (was + is) : 0;
            assertThat(to.frictionHeat).isCloseTo(2 + heat, within(1e-9));
            PathPoint still = new PathPoint(sys, true);
            still.state.set(before);
            still.value = 1000;
            energy(sys, true).addJump(before, still, 0);
            assertThat(still.frictionHeat).isZero();
            assertThat(still.loadWork).isZero();
            energy(sys, false).addJump(before, still, 0.3);
            assertThat(still.loadWork).as("not followed").isZero();
        }
    }

    /** Level spans without weight whose loads do not take part. */
    private static LineState tensions(double before, double behind) {
        LineState s = new LineState(2, 2);
        s.tension[0] = before;
        s.tension[3] = behind;
        return s;
    }

    @Test
    void theErrorOfAStepIsWhatEnergyAndWorkDiffer() {
        LineSystem sys = system(Passage.friction(0.2));
        PathPoint from = new PathPoint(sys, true);
        PathPoint to = new PathPoint(sys, true);
        from.energy = 100;
        from.frictionHeat = 10;
        from.loadWork = 30;
        to.energy = 150;
        to.frictionHeat = 40;
        to.loadWork = 100;
        assertThat(PathEnergy.error(from, to)).isEqualTo(80 - 70);
        to.loadWork = 120;
        assertThat(PathEnergy.error(from, to)).isEqualTo(10);
    }
}
