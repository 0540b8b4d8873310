package org.lifeline.design.envelope;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.lifeline.analysis.Statics;
import org.lifeline.base.Interval;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Passage;
import org.lifeline.model.Support;
import org.lifeline.model.absorber.DeploymentForce;

/** The combinations of the ranges of a design: temperatures, sides, masses, pretension, friction. */
final class LoadCombinations {
    private final LifelineDesign design;
    private final Tolerances tolerances;
    private final List<LoadCombination> list = new ArrayList<>();

    private LoadCombinations(LifelineDesign design, Tolerances tolerances) {
        this.design = design;
        this.tolerances = tolerances;
    }

    /** Every combination. */
    static List<LoadCombination> all(LifelineDesign design, Tolerances tolerances) {
        LoadCombinations c = new LoadCombinations(design, tolerances);
        for (double p : ends(tolerances.pretension())) {
            for (double mu : c.frictions()) {
                Lifeline line = c.line(p, mu);
                for (double t : new LinkedHashSet<>(design.temperatures())) {
                    for (double m : ends(tolerances.mass())) {
                        c.add(line, t, new FallCase.Deviation(p, mu, m));
                    }
                }
            }
        }
        return c.list;
    }

    /**
     * Tells whether a combination governs by the physics of it. A change of temperature and a change of pretension act alike,
     * through the stress-free length of cable between the anchors: the tightest line (least thermal elongation, highest
     * pretension) and the slackest enclose the others. Everything that grows with the energy of the fall grows with the mass
     * that falls. Both sides of the force range and both ends of the friction stay. Forces of a cold or a hot absorber that apply
     * up to a temperature meet the slackest or the tightest line there, so that this temperature stays as well.
     */
    static boolean mayGovern(LifelineDesign design, Tolerances tolerances, LoadCombination combination) {
        double coldest = Collections.min(design.temperatures());
        double hottest = Collections.max(design.temperatures());
        boolean shrinks = design.line().cable().thermalExpansion() >= 0;
        FallCase.Deviation d = combination.deviation();
        boolean heaviest = is(d.mass(), tolerances.mass().map(Interval::high));
        boolean tightest = is(d.pretension(), tolerances.pretension().map(Interval::high))
                && combination.temperature() == (shrinks ? coldest : hottest);
        boolean slackest = is(d.pretension(), tolerances.pretension().map(Interval::low))
                && combination.temperature() == (shrinks ? hottest : coldest);
        boolean end = is(d.pretension(), tolerances.pretension().map(Interval::high))
                || is(d.pretension(), tolerances.pretension().map(Interval::low));
        return heaviest && (tightest || slackest || (end && isLimit(design, combination.temperature())));
    }

    /** Tells whether the absorber of somebody counts as cold up to a temperature, or as hot from it on. */
    private static boolean isLimit(LifelineDesign design, double temperature) {
        return design.workers().stream()
                .flatMap(w -> w.connection().deployment().conditions().stream())
                .anyMatch(c -> c.temperature().equals(OptionalDouble.of(temperature)));
    }

    private static boolean is(double value, Optional<Double> end) {
        return end.isEmpty() || value == end.get();
    }

    /** The combination of the design itself, at a temperature and on a side. */
    static LoadCombination nominal(LifelineDesign design, double temperature, DeploymentForce side) {
        return new LoadCombination(design, design.line(), temperature, side, FallCase.Deviation.NONE);
    }

    private void add(Lifeline line, double temperature, FallCase.Deviation deviation) {
        list.add(new LoadCombination(design, line, temperature, DeploymentForce.MAXIMUM, deviation));
        list.add(new LoadCombination(design, line, temperature, DeploymentForce.CLEARANCE, deviation));
    }

    private double[] frictions() {
        boolean any = design.line().supports().stream().anyMatch(s -> hasFriction(s));
        return any ? ends(tolerances.friction()) : new double[] {Double.NaN};
    }

    private static boolean hasFriction(Support s) {
        return s.passage().kind() == Passage.Kind.FRICTION;
    }

    private static double[] ends(Optional<Interval> range) {
        if (range.isEmpty()) {
            return new double[] {Double.NaN};
        }
        Set<Double> set =
                new LinkedHashSet<>(List.of(range.get().low(), range.get().high()));
        return set.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private Lifeline line(double pretension, double friction) {
        Lifeline line = design.line();
        if (!Double.isNaN(pretension)) {
            double tension = Statics.withDefaults().solve(line, List.of()).firstTension();
            line = line.withInstalled(line.installed().withPretension(tension * pretension));
        }
        if (!Double.isNaN(friction)) {
            line = line.withSupports(s -> hasFriction(s) ? s.withPassage(Passage.friction(friction)) : s);
        }
        return line;
    }
}
