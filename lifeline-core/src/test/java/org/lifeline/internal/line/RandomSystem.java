package org.lifeline.internal.line;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.lifeline.base.Point;
import org.lifeline.model.InlineAbsorber;
import org.lifeline.model.Passage;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.LoadElongation;

/**
 * A random system in a random state, not in equilibrium: every mode of passages, loads and absorbers occurs. For tests of
 * derivatives.
 */
final class RandomSystem {
    final LineSystem system;
    final LineState state;
    private final SplittableRandom r;

    /** Straight in plan, one system in two; along the x-axis one in four. */
    private final boolean straight;

    private final boolean alongX;

    RandomSystem(long seed) {
        r = new SplittableRandom(seed);
        straight = seed % 2 == 0;
        alongX = seed % 4 == 0;
        double stiffness = log(1e5, 1e8);
        double tension = stiffness * log(1e-4, 1e-2);
        LoadElongation law = r.nextInt(3) > 0
                ? LoadElongation.linear(stiffness)
                : LoadElongation.curve(List.of(
                        new LoadElongation.Corner(0, 0),
                        new LoadElongation.Corner(1e-4, 0.01 * tension),
                        new LoadElongation.Corner(1.0, 0.5 * stiffness)));
        int spans = r.nextInt(1, 5);
        List<Point> points = points(spans);
        boolean elastic = r.nextBoolean();
        List<Support> supports = new ArrayList<>();
        for (int i = 0; i <= spans; i++) {
            supports.add(support(i, spans, points.get(i), elastic, tension));
        }
        List<LoadSlot> slots = new ArrayList<>();
        double[] length = new double[spans];
        for (int i = 0; i < spans; i++) {
            length[i] = points.get(i).distance(points.get(i + 1)) * (1 + r.nextDouble(-0.01, 0.05));
            int n = r.nextInt(3) == 0 ? 0 : r.nextInt(1, 4);
            for (int j = 1; j <= n; j++) {
                slots.add(new LoadSlot(i, r.nextBoolean(), length[i] * (j + r.nextDouble(-0.3, 0.3)) / (n + 1)));
            }
        }
        double weight = r.nextInt(8) == 0 ? 0 : tension * log(1e-4, 0.3) / 20;
        system = new LineSystem(new LineSystem(supports, weight, law), slots);
        System.arraycopy(length, 0, system.length, 0, spans);
        state = new LineState(spans, system.loads);
        state.thermal = 1 + r.nextDouble(-1e-3, 1e-3);
        for (int i = 0; i < spans; i++) {
            double run = points.get(i).horizontalDistance(points.get(i + 1));
            double x = (points.get(i + 1).x() - points.get(i).x()) / run;
            double y = (points.get(i + 1).y() - points.get(i).y()) / run;
            double along = 1 + some(0.05);
            double across = system.unknowns.planar ? 0 : some(0.05);
            state.tension[3 * i] = tension * (along * x - across * y);
            state.tension[3 * i + 1] = tension * (along * y + across * x);
            state.tension[3 * i + 2] = tension * some(0.4);
        }
        for (int i = 1; i < spans; i++) {
            state.slip[i] = 0.02 * some(1) * Math.min(length[i - 1], length[i]);
            state.passage[i] = passageMode(i);
        }
        for (int k = 0; k < system.reference.length; k += 3) {
            double along = tension * some(0.3);
            double across = system.unknowns.planar ? 0 : tension * some(0.3);
            system.reference[k] = system.unknowns.ux * along - system.unknowns.uy * across;
            system.reference[k + 1] = system.unknowns.uy * along + system.unknowns.ux * across;
            system.reference[k + 2] = tension * some(0.3);
        }
        for (int j = 0; j < system.loads; j++) {
            load(j, slots.get(j), tension);
        }
        for (int e = 0; e < 2; e++) {
            absorberState(e, tension);
        }
    }

    private double log(double low, double high) {
        return StrictMath.exp(r.nextDouble(StrictMath.log(low), StrictMath.log(high)));
    }

    private double some(double size) {
        return r.nextDouble(-size, size);
    }

    private List<Point> points(int spans) {
        List<Point> list = new ArrayList<>(List.of(Point.of(1, -2, 12)));
        double heading = alongX ? 0 : r.nextDouble(6);
        for (int i = 0; i < spans; i++) {
            Point a = list.get(i);
            double run = r.nextDouble(3, 30);
            heading += straight ? 0 : some(0.7);
            list.add(Point.of(
                    a.x() + run * StrictMath.cos(heading),
                    a.y() + run * StrictMath.sin(heading),
                    a.z() + run * some(0.5)));
        }
        return list;
    }

    private Support support(int i, int spans, Point at, boolean elastic, double tension) {
        boolean end = i == 0 || i == spans;
        Passage passage =
                switch (r.nextInt(4)) {
                    case 0 -> Passage.free();
                    case 1 -> Passage.clamped();
                    default -> Passage.friction(r.nextDouble(0.02, 0.6));
                };
        Support s = end ? Support.end("s" + i, at) : Support.intermediate("s" + i, at, passage);
        if (elastic && r.nextInt(3) > 0) {
            double x = tension * log(0.1, 100);
            double y = straight && !alongX ? x : tension * log(0.1, 100);
            s = s.withStiffness(new Stiffness(x, y, r.nextBoolean() ? tension : 1 / 0.0));
        }
        if (end && r.nextInt(3) == 0) {
            s = s.withInlineAbsorber(InlineAbsorber.of(LoadingCurve.through(
                    List.of(new LoadingCurve.Corner(0, 0.5 * tension), new LoadingCurve.Corner(1, 2 * tension)),
                    r.nextBoolean() ? 1 / 0.0 : 20 * tension,
                    30 * tension)));
        }
        return s;
    }

    private int passageMode(int i) {
        if (system.clamped[i]) {
            return LineState.STUCK;
        }
        if (system.friction[i] == 0) {
            return r.nextInt(5) == 0 ? LineState.JAMMED_ON : LineState.RUNS_ON;
        }
        return new int[] {LineState.STUCK, LineState.RUNS_ON, LineState.RUNS_BACK, LineState.JAMMED_BACK}[r.nextInt(4)];
    }

    private void load(int j, LoadSlot slot, double tension) {
        state.coordinate[j] = slot.coordinate();
        state.active[j] = r.nextInt(5) > 0;
        state.force[j] = state.active[j] ? tension * log(0.01, 1) : 0;
        if (slot.gripped() || !state.active[j]) {
            return;
        }
        boolean follower = hasLeader(j);
        state.mode[j] = follower
                ? LineState.FOLLOWS
                : new int[] {LineState.RUNNING, LineState.AT_START, LineState.AT_END}[r.nextInt(3)];
    }

    /** A free-running load in the same bay, no gripped one between, stands before. */
    private boolean hasLeader(int j) {
        for (int k = j - 1; k >= 0 && system.loadSpan[k] == system.loadSpan[j]; k--) {
            if (state.active[k]) {
                return !system.gripped[k];
            }
        }
        return false;
    }

    private void absorberState(int e, double tension) {
        InlineAbsorber a = system.absorbers[e];
        if (a == null) {
            return;
        }
        system.installedExtension[e] = r.nextDouble(0, 0.02);
        state.extension[e] = r.nextDouble(0.1, 1);
        if (r.nextBoolean()) {
            state.yielding[e] = true;
            state.piece[e] = a.curve().piece(state.extension[e]);
            state.yielded[e] = state.extension[e];
        } else if (r.nextBoolean()) {
            state.yielded[e] = r.nextDouble(0.1, 1);
        }
        assert tension > 0;
    }
}
