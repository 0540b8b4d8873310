package org.lifeline.design.envelope;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import org.lifeline.analysis.warning.Warning;
import org.lifeline.base.InputRule;
import org.lifeline.base.Interval;
import org.lifeline.base.Violations;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Obstruction;
import org.lifeline.model.Place;

/**
 * The worst values over a line, what governs them, and how they vary along it.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class EnvelopeResult {
    private final LifelineDesign design;
    private final Tolerances tolerances;
    private final ArrestQuantities quantities;
    private final List<List<Place>> places;
    private final List<List<InfluenceLine.Found>> found;
    private final List<Extremes.Collector> inSpans;
    private final Extremes.Scope scope;
    private final Extremes overall;
    private final long evaluations;

    EnvelopeResult(
            LifelineDesign design,
            Tolerances tolerances,
            EnvelopeSearch search,
            List<double[]> stations,
            boolean complete) {
        this.design = design;
        this.tolerances = tolerances;
        this.quantities = search.quantities();
        this.inSpans = search.inSpans();
        this.places = new ArrayList<>();
        this.found = new ArrayList<>();
        for (int s = 0; s < stations.size(); s++) {
            int span = s + 1;
            places.add(Arrays.stream(stations.get(s))
                    .mapToObj(x -> Place.of(span, x))
                    .toList());
            found.add(new ArrayList<>());
        }
        List<FailedCase> failed = new ArrayList<>();
        long sum = 0;
        for (InfluenceLine c : search.influenceLines()) {
            if (c.evaluations() > 0) {
                found.get(c.span() - 1).add(c.found(places.get(c.span() - 1)));
            }
            failed.addAll(c.failures());
            sum += c.evaluations();
        }
        this.evaluations = sum;
        this.scope = Extremes.Scope.of(design, tolerances, failed, complete).over(tolerances);
        this.overall = search.overall(scope);
    }

    /**
     * The design.
     *
     * @return the design
     */
    public LifelineDesign design() {
        return design;
    }

    /**
     * The ranges that the envelope went over, beside temperatures and sides.
     *
     * @return mass, pretension, friction
     */
    public Tolerances tolerances() {
        return tolerances;
    }

    /**
     * The worst values over the whole line.
     *
     * @return the extremes
     */
    public Extremes extremes() {
        return overall;
    }

    /**
     * The worst values of falls in one span. Quantities and margins are searched for in every span; loads on single supports
     * over the whole line, so that those of a span that does not govern are the worst of its first samples.
     *
     * @param span number of the span, from 1
     * @return the extremes of falls in that span
     * @throws org.lifeline.base.InvalidInputException if there is no such span
     */
    public Extremes inSpan(int span) {
        design.line().run(span);
        return inSpans.get(span - 1).finish(scope);
    }

    /**
     * A place on the line with the worst value there.
     *
     * @param place the place of the fall
     * @param along horizontal distance along the line from the first support [m]
     * @param value worst value over temperatures, sides and ranges [unit of the quantity]
     * @param fallCase the case that governs there
     * @since 1.0.0
     */
    public record ProfilePoint(Place place, double along, double value, FallCase fallCase) {}

    /**
     * How the worst value of a quantity varies with the place of the fall.
     *
     * @param quantity the quantity
     * @return places in the order of the line; places at which no case has the quantity are left out; unmodifiable
     */
    public List<ProfilePoint> profile(Quantity quantity) {
        Violations.required("quantity", quantity);
        return profileOf(ArrestQuantities.index(quantity));
    }

    /**
     * How the largest force on a support varies with the place of the fall.
     *
     * @param support number of the support, from 0
     * @return places in the order of the line; unmodifiable
     */
    public List<ProfilePoint> supportProfile(int support) {
        new Violations()
                .numbered(
                        "support",
                        support,
                        Interval.of(0, design.line().supports().size() - 1.0),
                        InputRule.NO_SUCH_SUPPORT_NUMBER)
                .throwIfAny();
        return profileOf(quantities.indexOfSupport(support));
    }

    private List<ProfilePoint> profileOf(int index) {
        List<ProfilePoint> list = new ArrayList<>();
        for (int s = 0; s < places.size(); s++) {
            for (int i = 0; i < places.get(s).size(); i++) {
                double worst = Double.NEGATIVE_INFINITY;
                InfluenceLine.Found governing = null;
                for (InfluenceLine.Found each : found.get(s)) {
                    double value = each.value(i, index);
                    if (value > worst) {
                        worst = value;
                        governing = each;
                    }
                }
                if (governing != null) {
                    Place place = places.get(s).get(i);
                    double along = design.line().along(place);
                    list.add(new ProfilePoint(place, along, quantities.sign(index) * worst, governing.caseAt(i)));
                }
            }
        }
        return List.copyOf(list);
    }

    /**
     * Clearance at a place of the line: what is required against what stands below.
     *
     * @param place the place of the fall
     * @param along horizontal distance along the line from the first support [m]
     * @param requiredElevation elevation below which nothing may stand, the lowest over all cases [m]
     * @param obstructionElevation elevation of the highest obstruction below the place [m]; NaN where there is none
     * @since 1.0.0
     */
    public record ClearancePoint(Place place, double along, double requiredElevation, double obstructionElevation) {
        /**
         * What remains.
         *
         * @return margin [m], negative where the clearance does not suffice; empty without an obstruction
         */
        public OptionalDouble margin() {
            return Double.isNaN(obstructionElevation)
                    ? OptionalDouble.empty()
                    : OptionalDouble.of(requiredElevation - obstructionElevation);
        }
    }

    /**
     * Clearance along the line. An attachment that runs, or is drawn, to another place comes to rest there; its margin over
     * all obstructions between is in {@link Extremes#overObstruction}.
     *
     * @return places in the order of the line, with the obstruction right below each; unmodifiable
     */
    public List<ClearancePoint> clearance() {
        List<ClearancePoint> list = new ArrayList<>();
        for (ProfilePoint p : profile(Quantity.REQUIRED_ELEVATION)) {
            double below = design.clearance().obstructions().stream()
                    .filter(o -> o.isBelow(p.along())
                            && o.isUnder(p.fallCase().fall().largestOffset()))
                    .mapToDouble(Obstruction::elevation)
                    .max()
                    .orElse(Double.NaN);
            list.add(new ClearancePoint(p.place(), p.along(), p.value(), below));
        }
        return List.copyOf(list);
    }

    /**
     * Cases that could not be computed.
     *
     * @return the cases with their reasons; unmodifiable
     */
    public List<FailedCase> failures() {
        return overall.failures();
    }

    /**
     * Number of arrests that were computed or tried.
     *
     * @return the number
     */
    public long evaluations() {
        return evaluations;
    }

    /**
     * Tells whether the search was carried through.
     *
     * @return false if the listener ended it
     */
    public boolean isComplete() {
        return scope.complete();
    }

    /**
     * What a reader of the worst values must not overlook, see {@link Extremes#warnings()}.
     *
     * @return the warnings, each with its case; unmodifiable
     */
    public List<Warning> warnings() {
        return extremes().warnings();
    }
}
