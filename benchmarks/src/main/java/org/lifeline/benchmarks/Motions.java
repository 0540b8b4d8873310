package org.lifeline.benchmarks;

import java.util.List;
import org.lifeline.base.Point;
import org.lifeline.internal.motion.Motion;
import org.lifeline.internal.motion.MotionSetup;
import org.lifeline.internal.path.LineModel;
import org.lifeline.model.Lifeline;
import org.lifeline.model.absorber.DeploymentForce;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;

/** The motions that the benchmarks follow. */
final class Motions {
    /** Damping time of the cable [s]. */
    static final double DAMPING = 2e-4;

    private static final double LANYARD = 1.8;
    private static final double FREE_FALL = 1.8;
    private static final double MASS = 100;
    private static final double SAMPLING = 1e-3;

    /** Length of the line in segments of the loaded span; those of the others are twice as long. */
    private static final double FIVE_SPANS = 10 + 0.5 * 41;

    private Motions() {}

    /** A fall with an absorber in the middle span of five that run freely. */
    static Motion fiveSpans(int segments, double seconds) {
        LineModel model = new LineModel(Lines.spans(5, false));
        LoadingCurve curve = Lines.absorber().curve(DeploymentForce.MAXIMUM);
        return motion(model, new Where(2, 5), curve, FIVE_SPANS / segments, seconds);
    }

    /** A fall without an absorber in the middle of a single span. */
    static Motion singleSpan(int segments, double seconds) {
        Lifeline line = Lifeline.builder()
                .cable(Cable.builder()
                        .massPerLength(Bounce.MASS_PER_LENGTH)
                        .axialStiffness(Bounce.STIFFNESS)
                        .dampingTime(DAMPING)
                        .build())
                .endAnchor("a", Point.of(0, 0, 10))
                .endAnchor("b", Point.of(Bounce.SPAN, 0, 10))
                .pretension(1500)
                .build();
        LoadingCurve curve = LoadingCurve.spring(Bounce.LANYARD_STIFFNESS);
        return motion(new LineModel(line), new Where(0, Bounce.SPAN / 2), curve, Bounce.SPAN / segments, seconds);
    }

    /** Where the fall is: span from 0, station [m]. */
    private record Where(int span, double station) {}

    private static Motion motion(LineModel model, Where where, LoadingCurve curve, double target, double seconds) {
        MotionSetup setup = new MotionSetup(model, DAMPING);
        setup.attach(
                where.span,
                model.materialPoint(model.hook(where.span, where.station, true)),
                true,
                List.of(new MotionSetup.Person(MASS, curve, LANYARD, new MotionSetup.Timing(0, FREE_FALL, true))));
        return new Motion(setup, target, 1, new Motion.Sampling(seconds, SAMPLING));
    }

    /** Speed at the catch of the single span [m/s]. */
    static double catchSpeed(double gravity) {
        return Math.sqrt(2 * gravity * FREE_FALL);
    }

    /** Taut length of the lanyard [m]. */
    static double tautLength() {
        return LANYARD;
    }

    /** Mass of the worker [kg]. */
    static double mass() {
        return MASS;
    }
}
