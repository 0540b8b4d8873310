package org.lifeline.design.handover;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.base.Interval;
import org.lifeline.base.Violations;
import org.lifeline.design.assessment.GoverningValue;
import org.lifeline.design.clearance.ClearanceAlongLineResult;
import org.lifeline.design.clearance.StationSteps;
import org.lifeline.design.envelope.ComputedCase;
import org.lifeline.design.envelope.EnvelopeResult;
import org.lifeline.design.envelope.Extreme;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.design.field.StringingRow;
import org.lifeline.design.field.StringingTable;
import org.lifeline.design.occupancy.OccupancyResult;
import org.lifeline.model.Connection;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.DeploymentForce;
import org.lifeline.model.absorber.PublishedScatter;

/**
 * The data sheet for a line, from its assessment: what its users and those who change it must know, on one page.
 *
 * <p>Everything follows from the assessment and the other parts; what was not drawn up is not on it. Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class DataSheet {
    private final HandoverResult handover;

    DataSheet(HandoverResult handover) {
        this.handover = handover;
    }

    /**
     * A connecting subsystem that is permitted: one of the design, by the values that it must keep.
     *
     * @param connection the subsystem
     * @param freeFall largest free fall with it anywhere on the line [m]; NaN if no fall with it was computed
     * @param forces deployment forces that it must keep between [N]: clearance force to maximum force
     * @param users ids of the workers who use it
     * @since 1.0.0
     */
    public record Permitted(Connection connection, double freeFall, Interval forces, List<String> users) {
        /**
         * Copies the list.
         *
         * @param connection the subsystem
         * @param freeFall largest free fall [m]
         * @param forces deployment forces [N]
         * @param users ids of the workers
         */
        public Permitted {
            Violations.requiredAll("users", users);
            users = List.copyOf(users);
        }
    }

    /**
     * What an anchor must hold.
     *
     * @param support id of the support
     * @param load largest load on it, with the model factor [N]
     * @param stated capacity that the design states [N]; NaN if it states none
     * @since 1.0.0
     */
    public record AnchorLoad(String support, double load, double stated) {}

    /**
     * The parts that it is drawn from.
     *
     * @return the parts
     */
    public HandoverResult handover() {
        return handover;
    }

    /**
     * The design.
     *
     * @return the design
     */
    public LifelineDesign design() {
        return handover.assessment().design();
    }

    /**
     * How many users the line takes at once.
     *
     * @return the number that meets all criteria; empty if it was not looked for
     */
    public OptionalInt users() {
        return handover.occupancy().map(o -> OptionalInt.of(o.inAll())).orElse(OptionalInt.empty());
    }

    /**
     * How many users a span takes at once.
     *
     * @return the numbers in the order of the spans; empty if they were not looked for; unmodifiable
     */
    public List<Integer> usersInSpans() {
        List<Integer> list = new ArrayList<>();
        Optional<OccupancyResult> o = handover.occupancy();
        for (int span = 1; o.isPresent() && span <= design().line().spans(); span++) {
            list.add(o.get().inSpan(span));
        }
        return List.copyOf(list);
    }

    /**
     * Masses of the workers, tools included, that were assessed.
     *
     * @return lightest and heaviest [kg]
     */
    public Interval masses() {
        return handover.assessment().extremes().masses();
    }

    /**
     * The connecting subsystems of the design.
     *
     * @return each different one once; unmodifiable
     */
    public List<Permitted> connections() {
        Map<Connection, List<String>> users = new LinkedHashMap<>();
        for (Worker w : design().workers()) {
            users.computeIfAbsent(w.connection(), c -> new ArrayList<>()).add(w.id());
        }
        List<Permitted> list = new ArrayList<>();
        users.forEach((c, ids) -> list.add(new Permitted(c, freeFall(c), forces(c), ids)));
        return List.copyOf(list);
    }

    private static Interval forces(Connection c) {
        double low = c.curve(DeploymentForce.CLEARANCE).activationForce();
        double high = c.curve(DeploymentForce.MAXIMUM).activationForce();
        return Interval.of(Math.min(low, high), Math.max(low, high));
    }

    private double freeFall(Connection c) {
        // Of the computed arrests: stated ones and all that govern.
        double most = Double.NaN;
        for (GoverningValue g : handover.assessment().governing()) {
            most = larger(most, g.extreme().arrest(), c);
        }
        for (ArrestResult r : handover.assessment().stated().arrests()) {
            most = larger(most, r, c);
        }
        return most;
    }

    private static double larger(double most, ArrestResult r, Connection c) {
        boolean ofIt = r.fall().fallers().stream().anyMatch(w -> w.connection().equals(c));
        return ofIt && !(most >= r.freeFall()) ? r.freeFall() : most;
    }

    /**
     * Clearance to keep below the line as installed, everywhere.
     *
     * @return distance [m], rounded up; of the whole line if the clearance along it was not drawn up
     */
    public OptionalDouble clearanceBelowLine() {
        Optional<ClearanceAlongLineResult> along = handover.clearance();
        if (along.isPresent()) {
            return OptionalDouble.of(along.get().largestBelowLine());
        }
        // From the straight line between the supports, which no installed line is above, down to the elevation that
        // each place of the envelope needs; those who hang before a fall have lowered the line that the arrest counts
        // from.
        double most = Double.NEGATIVE_INFINITY;
        for (EnvelopeResult.ProfilePoint p : handover.assessment().envelope().profile(Quantity.REQUIRED_ELEVATION)) {
            most = Math.max(most, design().line().chordElevation(p.place()) - p.value());
        }
        return Double.isInfinite(most)
                ? OptionalDouble.empty()
                : OptionalDouble.of(StationSteps.COMMON.up(Math.max(most + additionInTime(), lowestInTime())));
    }

    /**
     * The largest distance from the straight line between the supports that an arrest in time, or the line at rest with a rescuer, needs at its
     * own place [m]: on a line that slopes the lowest elevation of all need not be where most is needed below the line.
     */
    private double lowestInTime() {
        List<ComputedCase> cases = new ArrayList<>(handover.assessment().rescueStates());
        handover.assessment().followed().forEach(f -> cases.add(new ComputedCase(f.fallCase(), f.arrest())));
        double most = Double.NEGATIVE_INFINITY;
        for (ComputedCase each : cases) {
            double chord = design().line().chordElevation(each.fallCase().fall().place());
            Optional<Extreme> needed = Extremes.ofCases(design(), List.of(each)).of(Quantity.REQUIRED_ELEVATION);
            most = Math.max(most, needed.map(e -> chord - e.value()).orElse(Double.NEGATIVE_INFINITY));
        }
        return most;
    }

    /** By how much the lowest elevation that any arrest in time, or the line at rest with a rescuer, needs is below that of the energy balance [m]. */
    private double additionInTime() {
        Optional<Extreme> slow = handover.assessment().balance().of(Quantity.REQUIRED_ELEVATION);
        Optional<Extreme> fast = handover.assessment().inTime().of(Quantity.REQUIRED_ELEVATION);
        Optional<Extreme> rest = handover.assessment().rescue().flatMap(e -> e.of(Quantity.REQUIRED_ELEVATION));
        double lowest = Math.min(
                fast.map(Extreme::value).orElse(Double.POSITIVE_INFINITY),
                rest.map(Extreme::value).orElse(Double.POSITIVE_INFINITY));
        return slow.map(e -> Math.max(0, e.value() - lowest)).orElse(0.0);
    }

    /**
     * Where the line must not be used.
     *
     * @return distances along the line from its first support [m]; empty if there is no such place or the clearance along the line
     *     was not drawn up; unmodifiable
     */
    public List<Interval> mustNotBeUsed() {
        return handover.clearance().map(ClearanceAlongLineResult::mustNotBeUsed).orElse(List.of());
    }

    /**
     * Pretension by temperature: what is read in the first span.
     *
     * @return one row a temperature in service; unmodifiable
     */
    public List<StringingRow> pretension() {
        Interval tolerance =
                handover.installation().map(i -> i.request().tolerance()).orElse(Interval.exactly(1));
        return StringingTable.withDefaults()
                .withTolerance(tolerance)
                .solve(design().line(), design().temperatures())
                .stream()
                .filter(r -> r.span() == 1)
                .toList();
    }

    /**
     * What every anchor must hold.
     *
     * @return one row a support; unmodifiable
     */
    public List<AnchorLoad> anchors() {
        List<AnchorLoad> list = new ArrayList<>();
        for (Support s : design().line().supports()) {
            handover.assessment()
                    .governing("load on " + s.id())
                    .ifPresent(g -> list.add(
                            new AnchorLoad(s.id(), g.factored(), s.capacity().orElse(Double.NaN))));
        }
        return List.copyOf(list);
    }

    /**
     * Workers whose deployment forces, as stated for the dry, lie closer together than average and maximum of one drop were
     * published to.
     *
     * @return ids of the workers; unmodifiable
     */
    public List<String> narrowForces() {
        return design().workers().stream()
                .filter(w -> w.connection().kind() == Connection.Kind.LANYARD_WITH_ABSORBER)
                .filter(w -> PublishedScatter.isNarrower(
                        w.connection().deployment().dry(DeploymentForce.CLEARANCE),
                        w.connection().deployment().dry(DeploymentForce.MAXIMUM)))
                .map(Worker::id)
                .toList();
    }
}
