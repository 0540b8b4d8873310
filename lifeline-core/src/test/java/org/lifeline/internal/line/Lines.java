package org.lifeline.internal.line;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.lifeline.base.Point;
import org.lifeline.internal.numeric.WatchedWork;
import org.lifeline.model.Passage;
import org.lifeline.model.Support;
import org.lifeline.model.cable.LoadElongation;

/** Small level lines along x whose lengths, loads and tensions are set by hand. */
final class Lines {
    static final double EA = 2e6;
    static final double SPAN = 10;

    private Lines() {}

    /** A level line of spans of 10 m with its cable at a tension, straight if it has no weight. */
    static LineSystem level(double tension, double weight, Passage passage, int spans, LoadSlot... slots) {
        List<Support> supports = new ArrayList<>();
        for (int i = 0; i <= spans; i++) {
            Point at = Point.of(SPAN * i, 0, 0);
            boolean end = i == 0 || i == spans;
            supports.add(end ? Support.end("s" + i, at) : Support.intermediate("s" + i, at, passage));
        }
        return of(supports, tension, weight, slots);
    }

    /** A line through supports, each span as long as its chord at a tension. */
    static LineSystem of(List<Support> supports, double tension, double weight, LoadSlot... slots) {
        LineSystem line = new LineSystem(supports, weight, LoadElongation.linear(EA));
        for (int i = 0; i < line.spans; i++) {
            line.length[i] = line.chord[i] / (1 + tension / EA);
        }
        return new LineSystem(line, List.of(slots));
    }

    /** A state with the cable straight at a tension, its loads as the slots have them, none taking part. */
    static LineState straight(LineSystem sys, double tension, LoadSlot... slots) {
        LineState s = new LineState(sys.spans, sys.loads);
        for (int i = 0; i < sys.spans; i++) {
            for (int c = 0; c < 3; c++) {
                s.tension[3 * i + c] = tension * (sys.coordinate(i + 1, c) - sys.coordinate(i, c)) / sys.chord[i];
            }
        }
        for (int i = 1; i < sys.spans; i++) {
            s.passage[i] = sys.clamped[i] || sys.friction[i] > 0 ? LineState.STUCK : LineState.RUNS_ON;
        }
        for (int j = 0; j < sys.loads; j++) {
            s.coordinate[j] = slots[j].coordinate();
            s.mode[j] = slots[j].gripped() ? LineState.GRIPPED : LineState.RUNNING;
        }
        return s;
    }

    /** Puts a load on. */
    static LineState loaded(LineState s, int load, double force) {
        s.active[load] = true;
        s.force[load] = force;
        return s;
    }

    static Equilibrium equilibrium(LineSystem sys) {
        return new Equilibrium(sys, WatchedWork.alone());
    }

    /** Residuals over their scales, at a state. */
    static double[] residual(LineSystem sys, LineState s) {
        LineAssembly a = new LineAssembly(sys);
        if (!a.assemble(s, false)) {
            throw new AssertionError("no state");
        }
        return Arrays.copyOf(a.equations.residual, sys.unknowns.count());
    }
}
