package org.lifeline.testing;

import org.lifeline.analysis.TransientArrest;
import org.lifeline.analysis.TransientResult;
import org.lifeline.base.Point;
import org.lifeline.model.Attachment;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;
import org.lifeline.model.cable.LoadElongation;

/** Falls on a line so stiff that only the connecting subsystem gives way: a mass on a spring, in time. */
public final class StiffLine {
    private StiffLine() {}

    /**
     * What falls.
     *
     * @param mass mass [kg]
     * @param freeFall free fall [m]
     * @param gravity acceleration of gravity [m/s²]
     * @param tension tension of the line [N], a quarter of its stiffness at its middle in N/m
     */
    public record Body(double mass, double freeFall, double gravity, double tension) {}

    /**
     * A fall that is followed for a while.
     *
     * @param body what falls
     * @param curve force against extension of the connecting subsystem
     * @param duration how long to follow it [s]
     * @return the simulation; the worker is called "w"
     */
    public static TransientResult drop(Body body, LoadingCurve curve, double duration) {
        Lifeline line = Lifeline.builder()
                .cable(Cable.builder()
                        .massPerLength(Math.min(500, 1e-9 * body.tension))
                        .elongation(LoadElongation.linear(1e3 * body.tension))
                        .build())
                .endAnchor("a", Point.of(0, 0, 0))
                .endAnchor("b", Point.of(1, 0, 0))
                .pretension(body.tension)
                .gravity(body.gravity)
                .build();
        Worker worker = Worker.builder("w")
                .mass(body.mass)
                .walkingLevel(-2)
                .attachment(Attachment.GRIPPED)
                .connection(Connection.givenCurve(Math.max(0.5, body.freeFall / 2), curve))
                .build();
        Fall fall = Fall.builder("drop")
                .at(Place.of(1, 0.5))
                .faller(worker)
                .freeFall(body.freeFall)
                .build();
        return TransientArrest.withDefaults()
                .withSegmentLength(0.25)
                .withRefinements(0)
                .withDuration(duration)
                .solve(line, fall);
    }

    /**
     * A light string with a mass at its middle that is let go: the time until it is lowest is half a period.
     *
     * @param tension tension [N]
     * @param mass mass at the middle [kg]
     * @param length length [m]
     * @return time [s]
     */
    public static double halfPeriodOfString(double tension, double mass, double length) {
        Lifeline line = Lifeline.builder()
                .cable(Cable.builder().massPerLength(2e-3).axialStiffness(1e6).build())
                .endAnchor("a", Point.of(0, 0, 0))
                .endAnchor("b", Point.of(length, 0, 0))
                .pretension(tension)
                .gravity(1e-3)
                .build();
        Worker worker = Worker.builder("w")
                .mass(mass)
                .walkingLevel(-2)
                .attachment(Attachment.GRIPPED)
                .connection(Connection.plainLanyard(0.5, LoadingCurve.spring(1e6)))
                .build();
        Fall fall = Fall.builder("hung")
                .at(Place.of(1, length / 2))
                .faller(worker)
                .freeFall(0)
                .build();
        TransientResult r = TransientArrest.withDefaults()
                .withSegmentLength(length / 32)
                .withRefinements(0)
                .withDuration(1.2 * Math.PI * Math.sqrt(mass * length / (4 * tension)))
                .solve(line, fall);
        return r.firstCatch().worker("w").lowest().time();
    }
}
