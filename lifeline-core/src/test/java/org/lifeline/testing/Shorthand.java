package org.lifeline.testing;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.lifeline.base.Point;
import org.lifeline.model.Attachment;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.InlineAbsorber;
import org.lifeline.model.Installed;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.DeploymentForce;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;
import org.lifeline.model.cable.LoadElongation;

/**
 * Builds a case in few words; {@link CaseText} writes them down and reads them. A worker who could not reach the line is
 * moved, see {@link WithinReach}. Not thread-safe.
 */
public final class Shorthand {
    /** Rigid, or clamped. */
    public static final double INF = Double.POSITIVE_INFINITY;

    private final String name;
    private final List<Support> supports = new ArrayList<>();
    private final List<Worker> fallers = new ArrayList<>();
    private final List<Fall.Hanging> hanging = new ArrayList<>();
    private final List<Connection> connections = new ArrayList<>();
    private final List<double[]> bodies = new ArrayList<>();
    private Cable cable = Cable.builder().weightPerLength(1).axialStiffness(1e6).build();
    private Installed installed = Installed.pretension(1);
    private Fall.Builder fall = Fall.builder("fall");

    /** Starts a case. */
    public Shorthand(String name) {
        this.name = name;
    }

    /** Weight [N/m], expansion [1/K], then strain [-] and tension [N] of each corner of the law. */
    public Shorthand cable(double weight, double expansion, double... law) {
        List<LoadElongation.Corner> corners = new ArrayList<>();
        for (int i = 0; i < law.length; i += 2) {
            corners.add(new LoadElongation.Corner(law[i], law[i + 1]));
        }
        cable = Cable.builder()
                .weightPerLength(weight)
                .thermalExpansion(expansion)
                .elongation(LoadElongation.curve(corners))
                .build();
        return this;
    }

    /** An end anchor at x, y, z [m]. */
    public Shorthand end(double x, double y, double z) {
        supports.add(Support.end("end " + supports.size(), Point.of(x, y, z)));
        return this;
    }

    /** An intermediate anchor at x, y, z [m] with a coefficient of friction, infinite for a clamp. */
    public Shorthand post(double x, double y, double z, double friction) {
        Passage passage = Double.isInfinite(friction) ? Passage.clamped() : Passage.friction(friction);
        supports.add(Support.intermediate("post " + supports.size(), Point.of(x, y, z), passage));
        return this;
    }

    /** Stiffness of the last support [N/m]. */
    public Shorthand springs(double x, double y, double z) {
        return replace(supports.get(supports.size() - 1).withStiffness(new Stiffness(x, y, z)));
    }

    /** In-line absorber of the last support: initial and stop stiffness [N/m], then extension [m] and force [N]. */
    public Shorthand absorber(double initial, double stop, double... corners) {
        return replace(
                supports.get(supports.size() - 1).withInlineAbsorber(InlineAbsorber.of(curve(initial, stop, corners))));
    }

    private Shorthand replace(Support support) {
        supports.set(supports.size() - 1, support);
        return this;
    }

    /** The installed state: form, value, span, temperature [°C]. */
    public Shorthand installed(Installed.Form form, double value, int span, double temperature) {
        Installed state =
                switch (form) {
                    case PRETENSION -> Installed.pretension(value);
                    case HORIZONTAL_TENSION ->
                        Installed.horizontalTension(value).inSpan(span);
                    case INITIAL_SAG -> Installed.initialSag(span, value);
                    case UNSTRETCHED_LENGTH -> Installed.unstretchedLength(value);
                };
        installed = state.atTemperature(temperature);
        return this;
    }

    /** One who hangs: attachment, place, mass [kg]. */
    public Shorthand hanging(Attachment attachment, Place place, double mass) {
        Worker worker = Worker.builder("hanging " + hanging.size())
                .mass(mass)
                .walkingLevel(0)
                .attachment(attachment)
                .connection(Connection.plainLanyard(1, LoadingCurve.spring(1e5)))
                .build();
        hanging.add(new Fall.Hanging(worker, place));
        return this;
    }

    /**
     * One who falls.
     *
     * @param body mass [kg], walking level [m], height of the harness attachment [m]
     * @param device whether a self-retracting device, not a lanyard
     * @param length lock-up distance of the device or taut length of the lanyard [m]
     * @param stopAndCorners stop stiffness [N/m], then extension [m] and force [N] of each corner
     */
    public Shorthand faller(double[] body, boolean device, double length, double... stopAndCorners) {
        double stop = stopAndCorners[0];
        double[] corners = Arrays.copyOfRange(stopAndCorners, 1, stopAndCorners.length);
        LoadingCurve curve = curve(INF, stop, corners);
        connections.add(
                device
                        ? Connection.selfRetracting(length, brake(curve))
                        : corners.length == 2 && corners[1] == 0
                                ? Connection.plainLanyard(length, curve)
                                : Connection.givenCurve(length, curve));
        bodies.add(body.clone());
        return this;
    }

    private static Connection.PersonalAbsorber brake(LoadingCurve curve) {
        List<LoadingCurve.Corner> corners = curve.corners();
        LoadingCurve.Corner last = corners.get(corners.size() - 1);
        return Connection.PersonalAbsorber.builder()
                .clearanceForce(last.force())
                .maximumForce(last.force())
                .maximumExtension(last.extension())
                .initialStiffness(corners.get(0).force() > 0 ? INF : curve.slope(0))
                .stopStiffness(curve.stopStiffness())
                .build();
    }

    private static LoadingCurve curve(double initial, double stop, double... corners) {
        List<LoadingCurve.Corner> list = new ArrayList<>();
        for (int i = 0; i < corners.length; i += 2) {
            list.add(new LoadingCurve.Corner(corners[i], corners[i + 1]));
        }
        return LoadingCurve.through(list, initial, stop);
    }

    /** Where those fall who were named before: attachment, place, free fall [m], NaN for the geometry's. */
    public Shorthand fall(Attachment attachment, Place place, double freeFall) {
        double shortest = Double.isNaN(freeFall) ? 0 : freeFall / 2;
        for (int i = 0; i < bodies.size(); i++) {
            Connection c = connections.get(i);
            boolean device = c.kind() == Connection.Kind.SELF_RETRACTING;
            fallers.add(Worker.builder("faller " + i)
                    .mass(bodies.get(i)[0])
                    .walkingLevel(bodies.get(i)[1])
                    .attachmentHeight(bodies.get(i)[2])
                    .attachment(attachment)
                    .connection(device ? c : c.withLength(Math.max(shortest, c.tautLength(0))))
                    .build());
        }
        fall = Fall.builder("fall").at(place);
        if (!Double.isNaN(freeFall)) {
            fall.freeFall(freeFall);
        }
        return this;
    }

    /** Ends the case: temperature in service [°C] and side of the force range. */
    public ArrestCase at(double temperature, DeploymentForce side) {
        Lifeline.Builder line = Lifeline.builder().cable(cable).installed(installed);
        supports.forEach(line::support);
        fallers.forEach(fall::faller);
        hanging.forEach(h -> fall.hanging(h.worker(), h.place()));
        Lifeline made = line.build();
        return new ArrestCase(name, made, WithinReach.sameFreeFall(made, fall.build(), temperature), temperature, side);
    }
}
