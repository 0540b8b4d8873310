package org.lifeline.design.criteria;

import java.util.ArrayList;
import java.util.List;
import org.lifeline.base.Interval;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.DeploymentForce;
import org.lifeline.model.absorber.LoadingCurve;

/** Mass and absorber of everyone who uses the line or falls fit one of the classes E4 and E6. */
final class AbsorberClasses implements Requirement.BuiltIn {
    private static final List<Kind> KINDS =
            List.of(new Kind("E4", Interval.of(45, 115), 6_000), new Kind("E6", Interval.of(90, 175), 8_000));

    /** A class: masses [kg], highest deployment force when wet or frozen [N]. */
    private record Kind(String name, Interval masses, double force) {}

    @Override
    public CapacityCheck check(String title, CheckedDesign s) {
        List<CapacityCheck> workers = new ArrayList<>();
        for (Worker w : s.workers()) {
            List<CapacityCheck> kinds = new ArrayList<>();
            for (Kind k : KINDS) {
                String at = "class " + k.name;
                double heavy = s.massesOf(w).high();
                double light = s.massesOf(w).low();
                kinds.add(CapacityCheck.all(
                        at,
                        List.of(
                                CapacityCheck.of(
                                        at + ": largest mass against limit",
                                        CheckedValue.of(w.id(), heavy),
                                        most("workerMass", k.masses.high(), "kg"),
                                        true),
                                CapacityCheck.of(
                                        at + ": least mass wanted against smallest mass",
                                        CheckedValue.of(w.id(), light),
                                        least("workerMass", k.masses.low(), "kg"),
                                        true),
                                CapacityCheck.of(
                                        at + ": deployment force against limit",
                                        CheckedValue.of(w.id(), force(w)),
                                        most("deploymentForce", k.force, "N"),
                                        true))));
            }
            workers.add(CapacityCheck.any("one of the classes", kinds));
        }
        return CapacityCheck.all("every worker", workers);
    }

    /** Highest force of the absorber before its stop [N]. */
    private static double force(Worker w) {
        List<LoadingCurve.Corner> corners =
                w.connection().curve(DeploymentForce.MAXIMUM).corners();
        return corners.get(corners.size() - 1).force();
    }

    private static Limit most(String demand, double value, String unit) {
        return new Limit(demand, LimitType.AT_MOST, value, unit);
    }

    private static Limit least(String demand, double value, String unit) {
        return new Limit(demand, LimitType.AT_LEAST, value, unit);
    }

    @Override
    public List<Limit> limits() {
        List<Limit> list = new ArrayList<>();
        for (Kind k : KINDS) {
            list.add(least("workerMass", k.masses.low(), "kg"));
            list.add(most("workerMass", k.masses.high(), "kg"));
            list.add(most("deploymentForce", k.force, "N"));
        }
        return List.copyOf(list);
    }
}
