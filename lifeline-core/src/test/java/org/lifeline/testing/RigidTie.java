package org.lifeline.testing;

import org.lifeline.analysis.TransientArrest;
import org.lifeline.base.Point;
import org.lifeline.model.Attachment;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;

/**
 * Workers on ties that hardly give, in a span of a common rope. Every catch is a blow, and steps that follow a coarse mesh
 * do not follow blows: on two segments the energies drift apart, on many they add up.
 */
public final class RigidTie {
    /** Two segments to the span [m]. */
    public static final double COARSE = 6;

    /** 64 segments to the span [m]. */
    public static final double FINE = 12.0 / 64;

    private static final double TIE = 1.5;

    /** Stiffness of a tie that hardly gives [N/m]. */
    private static final double STIFF = 1e8;

    private RigidTie() {}

    /**
     * The span of 12 m.
     *
     * @param pretension tension as installed [N]
     */
    public static Lifeline line(double pretension) {
        return Lifeline.builder()
                .cable(Cable.builder().massPerLength(0.4).axialStiffness(3e6).build())
                .endAnchor("a", Point.of(0, 0, 20))
                .endAnchor("b", Point.of(12, 0, 20))
                .pretension(pretension)
                .build();
    }

    /** 100 kg that fall 1.8 m in the middle. */
    public static Fall hardFall() {
        return fall("middle", 6, worker("w", 100, TIE, STIFF), 1.8);
    }

    /** 60 kg that only lean into a lanyard of 100 kN/m: a fall with little energy. */
    public static Fall leaning() {
        return fall("leaning", 4, worker("leaning", 60, TIE, 1e5), 0);
    }

    /** 136 kg that fall 4 m elsewhere in the span. */
    public static Fall hardestFall() {
        return fall("hardest", 8, worker("falling", 136, 2, STIFF), 4);
    }

    /**
     * Two seconds on one mesh.
     *
     * @param segment length of the segments [m]
     */
    public static TransientArrest on(double segment) {
        return TransientArrest.withDefaults().withRefinements(0).withDuration(2).withSegmentLength(segment);
    }

    private static Worker worker(String id, double mass, double length, double stiffness) {
        return Worker.builder(id)
                .mass(mass)
                .walkingLevel(18.5)
                .attachment(Attachment.GRIPPED)
                .connection(Connection.givenCurve(length, LoadingCurve.spring(stiffness)))
                .build();
    }

    private static Fall fall(String id, double station, Worker worker, double freeFall) {
        return Fall.builder(id)
                .at(Place.of(1, station))
                .faller(worker)
                .freeFall(freeFall)
                .build();
    }
}
