package org.lifeline.testing;

import java.util.ArrayList;
import java.util.List;
import org.lifeline.base.Point;
import org.lifeline.model.Fall;
import org.lifeline.model.InlineAbsorber;
import org.lifeline.model.Installed;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;
import org.lifeline.model.absorber.DeploymentForce;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.absorber.LoadingCurve.Corner;
import org.lifeline.model.cable.Cable;
import org.lifeline.model.cable.LoadElongation;

/**
 * Random lines over the whole model, each from its seed: 1 to 50 spans of 0.5 to 500 m, slopes to 45°, corners in plan,
 * EA from 1e4 to 1e9 N, linear or not, slack to 20 % or taut, friction to 0.6, clamps, anchors from 1e3 N/m to rigid,
 * in-line absorbers, −40 to 60 °C.
 *
 * <p>Whether a line can hang is known only when it is solved; the installed state is aimed so that most can: the tension
 * at the lowest support is drawn in units of the weight of the longest span.
 */
public final class RandomLines {
    private final Chance chance;
    private final long seed;

    private RandomLines(long seed) {
        this.chance = new Chance(seed);
        this.seed = seed;
    }

    /** The case of a seed. */
    public static ArrestCase of(long seed) {
        return new RandomLines(seed).draw();
    }

    private ArrestCase draw() {
        List<Point> points = points();
        double stiffness = chance.log(1e4, 1e9);
        boolean weightless = chance.is(0.03);
        double weight = weightless ? 0 : weight(stiffness);
        double expansion = chance.is(0.8) ? Cable.STEEL_EXPANSION : chance.uniform(0, 2.3e-5);
        Cable cable = cable(stiffness, weight, expansion);
        Installing installing = new Installing(chance, points, weight, stiffness);
        double installedAt = chance.is(0.4) ? 15 : chance.uniform(-10, 30);
        // A weightless line that goes slack has no shape: it is never heated.
        double temperature = chance.is(0.3) ? installedAt : chance.uniform(-40, weightless ? installedAt : 60);
        Installed installed = installing.draw().atTemperature(installedAt);
        Lifeline.Builder builder = Lifeline.builder().cable(cable).installed(installed);
        supports(points, installing.tension()).forEach(builder::support);
        Lifeline line = builder.build();
        DeploymentForce side = chance.of(DeploymentForce.values());
        Fall fall = WithinReach.sameLength(line, new RandomFalls(chance, line).draw(), temperature);
        return new ArrestCase("seed " + seed, line, fall, temperature, side);
    }

    private List<Point> points() {
        int n = (int) Math.round(chance.log(0.6, 50.4));
        double base = chance.log(0.5, 500);
        int spread = chance.whole(0, 3);
        int slope = chance.whole(0, 3);
        int plan = chance.whole(0, 3);
        double climb = chance.uniform(-45, 45);
        double heading = chance.is(0.5) ? 0 : chance.uniform(0, 2 * Math.PI);
        Point at = Point.of(chance.uniform(-5, 5), chance.uniform(-5, 5), chance.uniform(0, 50));
        List<Point> list = new ArrayList<>(List.of(at));
        for (int i = 0; i < Math.max(1, n); i++) {
            double length =
                    switch (spread) {
                        case 0 -> base;
                        case 3 -> chance.log(0.5, 500);
                        default -> Math.min(500, Math.max(0.5, base * chance.uniform(0.6, 1.5)));
                    };
            double angle = Math.toRadians(
                    switch (slope) {
                        case 0 -> 0;
                        case 1 -> chance.uniform(-5, 5);
                        case 2 -> climb;
                        default -> chance.uniform(-45, 45);
                    });
            heading += switch (plan) {
                case 0, 1 -> 0;
                case 2 -> chance.is(0.3) ? chance.uniform(-1.6, 1.6) : 0;
                default -> chance.uniform(-0.6, 0.6);
            };
            at = Point.of(
                    at.x() + length * Math.cos(angle) * Math.cos(heading),
                    at.y() + length * Math.cos(angle) * Math.sin(heading),
                    at.z() + length * Math.sin(angle));
            list.add(at);
        }
        return list;
    }

    /** Weight per length [N/m]: that of a rope of this stiffness, light or heavy, or any. */
    private double weight(double stiffness) {
        return chance.is(0.8)
                ? Math.min(500, Math.max(0.01, stiffness * chance.log(3e-7, 1e-5)))
                : chance.log(0.01, 50);
    }

    private Cable cable(double stiffness, double weight, double expansion) {
        Cable.Builder builder = Cable.builder().weightPerLength(weight).thermalExpansion(expansion);
        if (chance.is(0.75)) {
            // As a curve: a stiffness alone is taken up to 5 % only, and soft cables are installed with more.
            return builder.elongation(LoadElongation.curve(
                            List.of(new LoadElongation.Corner(0, 0), new LoadElongation.Corner(1, stiffness))))
                    .build();
        }
        // A soft toe or a softening rope; strains in per mille.
        double strain = chance.log(1e-4, 2e-2);
        List<LoadElongation.Corner> corners = new ArrayList<>(List.of(new LoadElongation.Corner(0, 0)));
        double force = 0;
        double at = 0;
        for (int i = chance.whole(2, 4); i > 0; i--) {
            double step = strain * chance.uniform(0.2, 1);
            force += step * stiffness * chance.log(0.2, 3);
            at += step;
            corners.add(new LoadElongation.Corner(at, force));
        }
        return builder.elongation(LoadElongation.curve(corners)).build();
    }

    private List<Support> supports(List<Point> points, double tension) {
        int style = chance.whole(0, 4);
        boolean yielding = chance.is(0.5);
        double ends = chance.is(0.35) ? 0.7 : 0;
        List<Support> list = new ArrayList<>();
        int last = points.size() - 1;
        for (int i = 0; i <= last; i++) {
            boolean end = i == 0 || i == last;
            Support s = end
                    ? Support.end("end " + i, points.get(i))
                    : Support.intermediate("post " + i, points.get(i), passage(style));
            if (yielding && chance.is(0.6)) {
                s = s.withStiffness(stiffness());
            }
            if (end && chance.is(ends)) {
                s = s.withInlineAbsorber(inlineAbsorber(tension));
            }
            list.add(s);
        }
        return list;
    }

    private Passage passage(int style) {
        return switch (style) {
            case 0 -> Passage.free();
            case 1 -> Passage.friction(chance.uniform(0.02, 0.6));
            case 2 -> chance.is(0.5) ? Passage.clamped() : Passage.free();
            default -> chance.of(Passage.free(), Passage.clamped(), Passage.friction(chance.uniform(0, 0.6)));
        };
    }

    private Stiffness stiffness() {
        Stiffness s = Stiffness.rigid();
        s = chance.is(0.6) ? s.withX(chance.log(1e3, 1e8)) : s;
        s = chance.is(0.4) ? s.withY(chance.log(1e3, 1e8)) : s;
        return chance.is(0.4) ? s.withZ(chance.log(1e3, 1e8)) : s;
    }

    /** An absorber that the installed tension does not activate, but seldom. */
    private InlineAbsorber inlineAbsorber(double tension) {
        double force = chance.log(1e3, 5e4) + (chance.is(0.95) ? 1.5 * tension : 0);
        double length = chance.log(0.1, 2);
        double end = chance.is(0.5) ? force : force * chance.uniform(1, 2);
        double steepest = (end - force) / length;
        double rise =
                chance.is(0.5) ? Double.POSITIVE_INFINITY : Math.max(2 * steepest, force / chance.log(1e-3, 0.02));
        double stop = chance.is(0.1) ? Double.POSITIVE_INFINITY : chance.log(5e4, 5e6);
        if (Double.isFinite(rise)) {
            stop = Math.min(stop, rise);
        }
        return InlineAbsorber.of(
                LoadingCurve.through(List.of(new Corner(0, force), new Corner(length, end)), rise, stop));
    }
}
