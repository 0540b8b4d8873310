package org.lifeline.examples.criteria;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.examples.arrests.Demand;
import org.lifeline.examples.arrests.DesignRun;
import org.lifeline.examples.arrests.Governing;
import org.lifeline.examples.criteria.CriterionResult.LimitText;
import org.lifeline.examples.criteria.CriterionResult.Origin;
import org.lifeline.model.Cable;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;

/** The comparisons of one criterion while it is evaluated on a computed design. Not thread-safe. */
final class CriterionSheet {
    private final DesignRun run;
    private final String id;
    private final Origin origin;
    private final List<CriterionResult> results = new ArrayList<>();

    CriterionSheet(DesignRun run, String id, Origin origin) {
        this.run = run;
        this.id = id;
        this.origin = origin;
    }

    List<CriterionResult> results() {
        return List.copyOf(results);
    }

    /** Says why nothing is compared. */
    void open(String why) {
        add("not evaluated: " + why, "", new double[] {Double.NaN, Double.NaN}, null);
    }

    /** Compares two numbers; where one is NaN the design does not state it. */
    void compare(String comparison, String unit, double demand, double capacity) {
        if (Double.isNaN(demand) || Double.isNaN(capacity)) {
            open(comparison + ": not stated in the design");
        } else {
            add(comparison, unit, new double[] {demand, capacity}, null);
        }
    }

    private void add(String comparison, String unit, double[] numbers, @Nullable ArrestResult governs) {
        results.add(new CriterionResult(new LimitText(id, comparison, unit, origin), numbers[0], numbers[1], governs));
    }

    /** Compares the extreme of a demand, model factors applied, with a limit. */
    void atMost(Demand demand, double limit) {
        own(new Criterion.Own(id, demand, new Criterion.Limit(limit, ""), ""));
    }

    /** Compares a demand with the limit of the design's own. */
    void own(Criterion.Own own) {
        Demand demand = own.demand();
        Optional<Governing> extreme = Governing.of(run, demand, own.capacity().support());
        String support = own.capacity().support();
        String what = support.isEmpty() ? demand.words() : "load on " + support;
        if (extreme.isEmpty()) {
            open(what + ": there is no obstruction below");
            return;
        }
        double value = extreme.get().factored(run.design());
        double limit = own.capacity().value();
        if (demand.atLeast()) {
            add(
                    "least " + demand.words() + " wanted, against the one that remains",
                    demand.unit(),
                    new double[] {limit, value},
                    extreme.get().arrest());
        } else {
            add(
                    what + " against limit",
                    demand.unit(),
                    new double[] {value, limit},
                    extreme.get().arrest());
        }
    }

    /** Compares a multiple of the largest tension with what the cable and its terminations hold. */
    void cable(String comparison, double factor) {
        Cable cable = line().cable();
        Optional<Governing> tension = Governing.of(run, Demand.MAXIMUM_TENSION, "");
        if (cable.breakingStrength().isEmpty() || tension.isEmpty()) {
            open(comparison + ": the breaking strength of the cable is not stated");
            return;
        }
        double holds = cable.breakingStrength().getAsDouble() * cable.terminationEfficiency();
        double demand = factor * tension.get().factored(run.design());
        add(comparison, "N", new double[] {demand, holds}, tension.get().arrest());
    }

    /** Compares a multiple of the load on each support with its capacity. */
    void everySupport(String comparison, double factor) {
        for (Support each : line().supports()) {
            Optional<Governing> load = Governing.of(run, Demand.SUPPORT_LOAD, each.id());
            if (each.capacity().isEmpty() || load.isEmpty()) {
                open(comparison + ", " + each.id() + ": its capacity is not stated");
                continue;
            }
            double demand = factor * load.get().factored(run.design());
            add(
                    comparison + ", " + each.id(),
                    "N",
                    new double[] {demand, each.capacity().getAsDouble()},
                    load.get().arrest());
        }
    }

    /** An anchorage holds a force for each worker, or twice the load on it: whichever is less. */
    void anchorage(String perWorker, double force) {
        for (Support each : line().supports()) {
            Optional<Governing> load = Governing.of(run, Demand.SUPPORT_LOAD, each.id());
            if (each.capacity().isEmpty() || load.isEmpty()) {
                open("anchorage " + each.id() + ": its capacity is not stated");
                continue;
            }
            double prescribed = force * workers();
            double twice = 2 * load.get().factored(run.design());
            add(
                    (prescribed <= twice ? perWorker + " × number of workers" : "2 × load") + " against capacity, "
                            + each.id(),
                    "N",
                    new double[] {Math.min(prescribed, twice), each.capacity().getAsDouble()},
                    prescribed <= twice ? null : load.get().arrest());
        }
    }

    /** The end anchors hold a force. */
    void endAnchors(String comparison, double force) {
        anchors(comparison, force, true);
    }

    /** The intermediate anchors hold a force. */
    void intermediateAnchors(String comparison, double force) {
        anchors(comparison, force, false);
    }

    private void anchors(String comparison, double force, boolean ends) {
        for (Support each : line().supports()) {
            if (each.isEnd() == ends) {
                compare(
                        comparison + ", " + each.id(),
                        "N",
                        force,
                        each.capacity().orElse(Double.NaN));
            }
        }
    }

    /** Arrest force or free fall stays within its limit; the one with the smaller ratio is shown. */
    void either(double force, double freeFall) {
        CriterionSheet both = new CriterionSheet(run, id, origin);
        both.atMost(Demand.ARREST_FORCE, force);
        both.atMost(Demand.FREE_FALL, freeFall);
        both.results().stream()
                .min((a, b) -> Double.compare(a.ratio(), b.ratio()))
                .ifPresent(results::add);
    }

    /** The worker's lowest point stays above the highest obstruction, the margin not counted. */
    void noContact() {
        Optional<Governing> margin = Governing.of(run, Demand.CLEARANCE_MARGIN, "");
        if (margin.isEmpty()) {
            open("no contact with a lower level: there is no obstruction below");
            return;
        }
        ArrestResult r = margin.get().arrest();
        double line = r.clearance().lineElevation();
        double needed = Demand.REQUIRED_BELOW_LINE.factored(
                line - r.clearance().lowestPoint(), r, run.design().modelFactors());
        double available = line - r.clearance().obstruction().orElse(Double.NaN);
        add(
                "distance to the lowest point against distance to the lower level, both below the line",
                "m",
                new double[] {needed, available},
                r);
    }

    /** How far the harness attachment moves sideways, across the line and along it. */
    void swing(double most) {
        double worst = -1;
        ArrestResult governs = null;
        for (ArrestResult each : run.arrests()) {
            Fall fall = each.fall();
            double along = each.attachmentAtPeak().horizontalDistance(each.attachmentBefore());
            double across =
                    fall.fallers().stream().mapToDouble(Worker::offset).max().orElse(0);
            if (Math.hypot(along, across) > worst) {
                worst = Math.hypot(along, across);
                governs = each;
            }
        }
        add("horizontal displacement against limit", "m", new double[] {worst, most}, governs);
    }

    void steepestSlope(double degrees) {
        double worst = 0;
        for (int i = 1; i <= line().spans(); i++) {
            worst = Math.max(worst, Math.toDegrees(Math.atan2(Math.abs(line().rise(i)), line().run(i))));
        }
        compare(String.format(Locale.ROOT, "steepest span against %.0f°", degrees), "°", worst, degrees);
    }

    /** The installed sag of every span against a share of its length. */
    void leastSag(double share) {
        for (int i = 1; i <= line().spans(); i++) {
            compare(
                    String.format(Locale.ROOT, "%.3f × length against initial sag, span %d", share, i),
                    "m",
                    share * line().run(i),
                    run.installed().span(i).sag());
        }
    }

    int workers() {
        return run.design().workers().size();
    }

    double largestMass() {
        return run.design().workers().stream().mapToDouble(Worker::mass).max().orElse(Double.NaN);
    }

    double diameter() {
        return line().cable().diameter().orElse(Double.NaN);
    }

    double longestSpan() {
        double longest = 0;
        for (int i = 1; i <= line().spans(); i++) {
            longest = Math.max(longest, line().run(i));
        }
        return longest;
    }

    double lineLength() {
        double sum = 0;
        for (int i = 1; i <= line().spans(); i++) {
            sum += line().run(i);
        }
        return sum;
    }

    double statedMargin() {
        return run.design().clearance().margin();
    }

    double statedStretch() {
        return run.design().clearance().harnessStretch();
    }

    private Lifeline line() {
        return run.design().line();
    }
}
