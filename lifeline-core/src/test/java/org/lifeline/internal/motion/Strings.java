package org.lifeline.internal.motion;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.lifeline.base.Point;
import org.lifeline.internal.path.LineModel;
import org.lifeline.model.Lifeline;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;

/** A single level span as a vibrating string, and what is read from its signal. */
final class Strings {
    /** Gravity that does not count [m/s²]. */
    static final double NONE = 0.01;

    private Strings() {}

    /**
     * A string at rest.
     *
     * @param tension tension [N] and axial stiffness [N]
     * @param span length [m] and mass per stretched length [kg/m]
     * @param gravity acceleration of gravity [m/s²]
     * @param segments number of segments
     */
    static MotionSystem string(double[] tension, double[] span, double gravity, int segments) {
        Lifeline line = Lifeline.builder()
                .cable(Cable.builder()
                        .massPerLength(span[1] * (1 + tension[0] / tension[1]))
                        .axialStiffness(tension[1])
                        .build())
                .endAnchor("a", Point.of(0, 0, 0))
                .endAnchor("b", Point.of(span[0], 0, 0))
                .pretension(tension[0])
                .gravity(gravity)
                .build();
        MotionSetup setup = new MotionSetup(new LineModel(line), 0);
        // Somebody who never falls: only then are segments as short as asked for.
        setup.attach(
                0,
                Point.of(0.5 * span[0], 0, 0),
                true,
                List.of(new MotionSetup.Person(1, LoadingCurve.spring(1), 1, new MotionSetup.Timing(1e9, 0, false))));
        return new MotionSystem(setup, span[0] / segments, 1);
    }

    /** Deflects all nodes by a shape of x. */
    static void deflect(MotionSystem system, DoubleUnaryOperator shape) {
        LumpedMassChain c = system.chain;
        for (int i = 1; i < c.nodes - 1; i++) {
            c.z[i] += shape.applyAsDouble(c.x[i]);
        }
    }

    /**
     * Angular frequency of a signal that is projected on a shape, from its zero crossings.
     *
     * @param system the string, already deflected
     * @param rest elevations of the nodes at rest [m]
     * @param shape the shape to project on
     * @param crossings number of zero crossings to wait for
     * @return angular frequency [rad/s]
     */
    static double frequency(MotionSystem system, double[] rest, DoubleUnaryOperator shape, int crossings) {
        List<Double> times = new ArrayList<>();
        double before = project(system, rest, shape);
        double last = system.time;
        while (times.size() < crossings) {
            system.kick();
            system.move();
            double now = project(system, rest, shape);
            if (before * now < 0) {
                times.add(last + (system.time - last) * before / (before - now));
            }
            before = now;
            last = system.time;
        }
        return Math.PI * (crossings - 1) / (times.get(crossings - 1) - times.get(0));
    }

    private static double project(MotionSystem system, double[] rest, DoubleUnaryOperator shape) {
        LumpedMassChain c = system.chain;
        double sum = 0;
        for (int i = 1; i < c.nodes - 1; i++) {
            sum += (c.z[i] - rest[i]) * shape.applyAsDouble(c.x[i]);
        }
        return sum;
    }

    /** Where a quantity of the nodes is largest between two places, with a parabola through the three nodes there [m]. */
    static double crest(double[] x, double[] value, double from, double to) {
        int best = -1;
        for (int i = 1; i < x.length - 1; i++) {
            if (x[i] > from && x[i] < to && (best < 0 || value[i] > value[best])) {
                best = i;
            }
        }
        double a = value[best - 1];
        double b = value[best];
        double c = value[best + 1];
        return x[best] + 0.5 * (a - c) / (a - 2 * b + c) * (x[best + 1] - x[best]);
    }

    static void run(MotionSystem system, double until) {
        while (system.time < until) {
            system.kick();
            system.move();
        }
    }
}
