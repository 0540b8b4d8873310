package org.lifeline.model;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.jspecify.annotations.Nullable;
import org.lifeline.base.Point;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;

/**
 * A line and a fall as they stand on sites, drawn from a seed, with every number open to change: what a test of a truth
 * needs, which turns one number and leaves the others. One to six spans of 3 to 20 m, steel rope, posts more or less in
 * line, a worker with a lanyard.
 */
public final class PlausibleLine {
    /** How the cable passes a post: a coefficient of friction, or infinite for a clamp. */
    public final List<Double> friction = new ArrayList<>();

    /** Positions of the supports. */
    public final List<Point> points = new ArrayList<>();

    public final long seed;
    public double axialStiffness;
    public double massPerLength;
    public double expansion = 12e-6;

    /** Pretension [N], unless an installed state is set. */
    public double pretension;

    public @Nullable Installed installed;

    /** Stiffness of the two ends along x and y [N/m]. */
    public double endStiffness = Double.POSITIVE_INFINITY;

    /** Stiffness of the posts along x and y [N/m]. */
    public double postStiffness = Double.POSITIVE_INFINITY;

    /** Activation force of in-line absorbers at the first and the last support [N]; none if not a number. */
    public final double[] inline = {Double.NaN, Double.NaN};

    public double inlineExtension = 1;
    public double inlineStiffness = 8e6;
    public double inlineStop = 2e5;
    public int span;

    /** Station over the run of the span [-]. */
    public double station;

    public double mass;
    public double freeFall;

    /** Whether the free fall is stated, or follows from the geometry and is as drawn from the chord. */
    public boolean freeFallStated = true;

    public double deploymentForce;
    public double initialStiffness;
    public double maximumExtension = 1.5;
    public double stopStiffness = 2e5;
    public Attachment attachment;
    public int fallers = 1;

    /** Temperature in service [°C]. */
    public double temperature = Installed.DEFAULT_TEMPERATURE;

    /** Draws a line with straight rows of posts or, if wished, corners and climbs. */
    public PlausibleLine(long seed, boolean corners) {
        this.seed = seed;
        SplittableRandom r = new SplittableRandom(seed);
        int spans = r.nextInt(1, 7);
        double base = r.nextDouble(4, 15);
        double heading = corners ? r.nextDouble(6) : 0;
        Point at = Point.of(0, 0, 10);
        points.add(at);
        for (int i = 0; i < spans; i++) {
            double run = base * r.nextDouble(0.7, 1.3);
            heading += corners && r.nextInt(3) == 0 ? r.nextDouble(-1, 1) : 0;
            double rise = corners ? run * r.nextDouble(-0.3, 0.3) : 0;
            at = Point.of(at.x() + run * Math.cos(heading), at.y() + run * Math.sin(heading), at.z() + rise);
            points.add(at);
            if (i > 0) {
                int kind = r.nextInt(4);
                friction.add(kind == 0 ? 0 : kind == 1 ? Double.POSITIVE_INFINITY : r.nextDouble(0.05, 0.4));
            }
        }
        double diameter = r.nextDouble(8, 14);
        axialStiffness = 4e4 * diameter * diameter * r.nextDouble(0.6, 1.2);
        massPerLength = 0.004 * diameter * diameter;
        pretension = r.nextDouble(500, 4000);
        span = r.nextInt(1, spans + 1);
        station = r.nextDouble(0.2, 0.8);
        mass = r.nextDouble(60, 140);
        freeFall = r.nextDouble(0.3, 2);
        deploymentForce = r.nextDouble(2500, 6000);
        initialStiffness = r.nextBoolean() ? Double.POSITIVE_INFINITY : r.nextDouble(5e4, 2e5);
        attachment = r.nextBoolean() ? Attachment.GRIPPED : Attachment.FREE_RUNNING;
        if (r.nextInt(3) == 0) {
            endStiffness = Math.exp(r.nextDouble(11, 15));
        }
        if (r.nextInt(4) == 0) {
            postStiffness = Math.exp(r.nextDouble(11, 15));
        }
        if (r.nextInt(4) == 0) {
            inline[r.nextInt(2)] = Math.max(6000, 2 * pretension);
        }
    }

    public Cable cable() {
        return Cable.builder()
                .massPerLength(massPerLength)
                .axialStiffness(axialStiffness)
                .thermalExpansion(expansion)
                .build();
    }

    public Lifeline line() {
        Lifeline.Builder b = Lifeline.builder()
                .cable(cable())
                .installed(installed == null ? Installed.pretension(pretension) : installed);
        int last = points.size() - 1;
        for (int i = 0; i <= last; i++) {
            boolean end = i == 0 || i == last;
            Support s = end
                    ? Support.end("end " + i, points.get(i))
                    : Support.intermediate("post " + i, points.get(i), passage(friction.get(i - 1)));
            double k = end ? endStiffness : postStiffness;
            s = s.withStiffness(new Stiffness(k, k, Double.POSITIVE_INFINITY));
            double force = i == 0 ? inline[0] : i == last ? inline[1] : Double.NaN;
            if (!Double.isNaN(force)) {
                s = s.withInlineAbsorber(InlineAbsorber.of(LoadingCurve.through(
                        List.of(new LoadingCurve.Corner(0, force), new LoadingCurve.Corner(inlineExtension, force)),
                        inlineStiffness,
                        inlineStop)));
            }
            b.support(s);
        }
        return b.build();
    }

    private static Passage passage(double mu) {
        return Double.isInfinite(mu) ? Passage.clamped() : Passage.friction(mu);
    }

    public Place place() {
        return Place.of(span, station * points.get(span - 1).horizontalDistance(points.get(span)));
    }

    private double chordElevation() {
        Point a = points.get(span - 1);
        return a.z() + station * (points.get(span).z() - a.z());
    }

    public LoadingCurve curve() {
        return LoadingCurve.through(
                List.of(
                        new LoadingCurve.Corner(0, deploymentForce),
                        new LoadingCurve.Corner(maximumExtension, deploymentForce)),
                initialStiffness,
                stopStiffness);
    }

    /** Length of the lanyard [m]: 1.8 m, or as much as the free fall asks for. */
    private double tautLength() {
        return Math.max(1.8, freeFall);
    }

    public Worker worker(String id) {
        return Worker.builder(id)
                .mass(mass)
                .walkingLevel(chordElevation() - tautLength() + freeFall - 1.5)
                .attachment(attachment)
                .connection(Connection.givenCurve(tautLength(), curve()))
                .build();
    }

    public Fall fall() {
        Fall.Builder b = Fall.builder("fall").at(place());
        if (freeFallStated) {
            b.freeFall(freeFall);
        }
        for (int i = 1; i <= fallers; i++) {
            b.faller(worker("worker " + i));
        }
        return b.build();
    }

    /** Lets the cable run without friction over every post. */
    public PlausibleLine allFree() {
        friction.replaceAll(mu -> 0.0);
        return this;
    }

    /** Leaves the in-line absorbers out. */
    public PlausibleLine withoutInlineAbsorbers() {
        inline[0] = Double.NaN;
        inline[1] = Double.NaN;
        return this;
    }

    @Override
    public String toString() {
        return "seed " + seed;
    }
}
