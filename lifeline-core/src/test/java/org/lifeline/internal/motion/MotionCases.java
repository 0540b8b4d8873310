package org.lifeline.internal.motion;

import java.util.List;
import java.util.OptionalDouble;
import org.lifeline.base.Point;
import org.lifeline.internal.path.LineModel;
import org.lifeline.model.InlineAbsorber;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Support;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;

/** Small lines and workers that several tests set in motion. */
final class MotionCases {
    static final double G = 9.80665;
    static final double EA = 3e6;
    static final double MASS_PER_LENGTH = 0.4;
    static final double PRETENSION = 1500;
    static final double SPAN = 10;
    static final double LANYARD = 5e4;
    static final double TAUT = 1.5;

    private MotionCases() {}

    /** A single level span. */
    static LineModel single() {
        return new LineModel(Lifeline.builder()
                .cable(cable())
                .endAnchor("a", Point.of(0, 0, 10))
                .endAnchor("b", Point.of(SPAN, 0, 10))
                .pretension(PRETENSION)
                .build());
    }

    /** Two level spans with a post between. */
    static LineModel two(Passage passage) {
        return new LineModel(Lifeline.builder()
                .cable(cable())
                .endAnchor("a", Point.of(0, 0, 10))
                .intermediateAnchor("p", Point.of(SPAN, 0, 10), passage)
                .endAnchor("b", Point.of(2 * SPAN, 0, 10))
                .pretension(PRETENSION)
                .build());
    }

    /** A single span with an absorber at its start. */
    static LineModel withAbsorber(LoadingCurve curve) {
        return new LineModel(Lifeline.builder()
                .cable(cable())
                .support(Support.end("a", Point.of(0, 0, 10)).withInlineAbsorber(InlineAbsorber.of(curve)))
                .endAnchor("b", Point.of(SPAN, 0, 10))
                .pretension(PRETENSION)
                .build());
    }

    private static Cable cable() {
        return Cable.builder().massPerLength(MASS_PER_LENGTH).axialStiffness(EA).build();
    }

    /** 100 kg on a plain lanyard. */
    static MotionSetup.Person person(double start, double freeFall, boolean first) {
        return new MotionSetup.Person(
                100, LoadingCurve.spring(LANYARD), TAUT, new MotionSetup.Timing(start, freeFall, first));
    }

    /** One who falls in the first span, at a station, gripped or on a ring. */
    static MotionSetup setup(LineModel model, double station, boolean gripped) {
        MotionSetup setup = new MotionSetup(model, 5e-4);
        setup.attach(0, model.pointAtStation(0, station), gripped, List.of(person(0, 1, true)));
        return setup;
    }

    static MeshRefinement.Request request(double accuracy, int refinements, double segment) {
        return new MeshRefinement.Request(
                accuracy,
                refinements,
                OptionalDouble.of(segment),
                new MeshRefinement.Course(new Motion.Sampling(2, 0.01), OptionalDouble.of(0)));
    }

    static double unstretched(LumpedMassChain c) {
        double sum = 0;
        for (int j = 0; j < c.segments(); j++) {
            sum += c.length[j];
        }
        return sum;
    }
}
