package org.lifeline.internal.path;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.lifeline.internal.line.LineState;
import org.lifeline.model.Passage;

/** Where loads go that are hooked on, and in which order and mode they then stand. */
class LoadPlacementTest {
    private final LineModel model = SmallLines.model(Passage.free(), 2);

    private LineState state() {
        return model.state();
    }

    private void activate(LineModel.Load... loads) {
        for (LineModel.Load each : loads) {
            new LoadPlacement(model).activate(each);
        }
    }

    @Test
    void aGripHoldsThePointThatHangsAtItsStation() {
        for (double station : new double[] {0.5, 3, 5, 9.5}) {
            LineModel.Load load = model.hook(1, station, true);
            assertThat(model.materialPoint(load).x()).isCloseTo(10 + station, within(1e-9));
        }
    }

    /** A level span is lowest in its middle, whatever the station at which a free-running load is hooked on. */
    @Test
    void aFreeRunningLoadGoesToTheLowestPoint() {
        double length = model.system().length[0];
        for (double station : new double[] {0.5, 5, 9}) {
            assertThat(new LoadPlacement(model).running(0, station)).isCloseTo(0.5 * length, within(1e-6));
        }
    }

    @Test
    void aFreeRunningLoadDoesNotPassAGrip() {
        LineModel.Load grip = model.hook(0, 3, true);
        activate(grip);
        LoadPlacement placement = new LoadPlacement(model);
        double at = state().coordinate[grip.index()];
        assertThat(placement.running(0, 1))
                .as("on the start side")
                .isLessThan(at)
                .isCloseTo(at, within(1e-12));
        assertThat(placement.running(0, 7))
                .as("on the end side")
                .isCloseTo(0.5 * model.system().length[0], within(1e-3));
        LineModel.Load other = model.hook(0, 8, true);
        activate(other);
        placement = new LoadPlacement(model);
        assertThat(placement.running(0, 9)).isCloseTo(state().coordinate[other.index()], within(1e-12));
    }

    @Test
    void loadsStandInTheOrderOfTheCable() {
        LineModel.Load last = model.hook(1, 8, true);
        LineModel.Load first = model.hook(0, 4, true);
        LineModel.Load middle = model.hook(1, 2, true);
        assertThat(new int[] {first.index(), middle.index(), last.index()}).containsExactly(0, 1, 2);
        LineModel.Load beside = model.hook(1, 2, true);
        assertThat(beside.index())
                .as("at the same place behind the earlier one")
                .isEqualTo(2);
        assertThat(last.index()).isEqualTo(3);
        assertThat(model.system().loadSpan).containsExactly(0, 1, 1, 1);
    }

    @Test
    void whatStandsAlreadyKeepsItsForceAndMode() {
        LineModel.Load one = model.hook(1, 5, true);
        model.hang(one, 700);
        LineState before = state().copy();
        LineModel.Load other = model.hook(0, 5, false);
        assertThat(one.index()).isEqualTo(1);
        assertThat(state().force).containsExactly(0, 700);
        assertThat(state().active).containsExactly(false, true);
        assertThat(state().tension).containsExactly(before.tension);
        assertThat(state().slip).containsExactly(before.slip);
        assertThat(state().thermal).isEqualTo(before.thermal);
        assertThat(other.index()).isZero();
    }

    @Test
    void activeLoadsGripOrRun() {
        LineModel.Load grip = model.hook(0, 3, true);
        LineModel.Load ring = model.hook(1, 3, false);
        activate(grip, ring);
        assertThat(state().mode[grip.index()]).isEqualTo(LineState.GRIPPED);
        assertThat(state().mode[ring.index()]).isEqualTo(LineState.RUNNING);
        assertThat(state().active).containsOnly(true);
        state().mode[ring.index()] = LineState.AT_END;
        activate(ring);
        assertThat(state().mode[ring.index()]).as("active already").isEqualTo(LineState.AT_END);
    }

    @Test
    void aLoadAtASupportTakesNoPartInTheCable() {
        LineModel.Load load = model.hookAtSupport(1);
        activate(load);
        assertThat(state().active).containsExactly(false);
        assertThat(model.position(load)).isEqualTo(model.support(1));
        assertThat(model.materialPoint(load)).isEqualTo(model.support(1));
    }

    @Test
    void freeRunningLoadsOfOneBayStandTogether() {
        LineModel.Load one = model.hook(0, 3, false);
        LineModel.Load other = model.hook(0, 3, false);
        activate(one);
        state().coordinate[one.index()] = 4;
        activate(other);
        assertThat(state().mode[other.index()]).isEqualTo(LineState.FOLLOWS);
        assertThat(state().coordinate[other.index()]).isEqualTo(4);
    }

    /** One that comes before another leads, in the mode that the other had. */
    @Test
    void aFreeRunningLoadThatComesBeforeAnotherLeads() {
        LineModel.Load one = model.hook(0, 3, false);
        LineModel.Load other = model.hook(0, 3, false);
        activate(other);
        state().mode[other.index()] = LineState.AT_END;
        state().coordinate[other.index()] = 9;
        activate(one);
        assertThat(state().mode[one.index()]).isEqualTo(LineState.AT_END);
        assertThat(state().mode[other.index()]).isEqualTo(LineState.FOLLOWS);
        assertThat(state().coordinate[one.index()]).isEqualTo(9);
    }

    @Test
    void aGripBetweenSeparatesThem() {
        LineModel.Load one = model.hook(0, 3, false);
        LineModel.Load grip = model.hook(0, 6, true);
        LineModel.Load other = model.hook(0, 8, false);
        activate(one, grip, other);
        assertThat(state().mode[one.index()]).isEqualTo(LineState.RUNNING);
        assertThat(state().mode[other.index()]).isNotEqualTo(LineState.FOLLOWS);
    }

    /** A load whose place has run out of the span stands at its end. */
    @Test
    void aLoadIsKeptWithinItsSpan() {
        for (boolean gripped : new boolean[] {true, false}) {
            for (boolean atEnd : new boolean[] {true, false}) {
                LineModel m = SmallLines.model(Passage.free(), 2);
                LineModel.Load load = m.hook(0, 3, gripped);
                m.state().coordinate[load.index()] = atEnd ? 11 : -1;
                new LoadPlacement(m).activate(load);
                double end = m.system().length[0] + m.state().slip[1];
                assertThat(m.state().coordinate[load.index()]).isEqualTo(atEnd ? end : 0);
                assertThat(m.state().mode[load.index()])
                        .isEqualTo(gripped ? LineState.GRIPPED : atEnd ? LineState.AT_END : LineState.AT_START);
            }
        }
    }
}
