package org.lifeline.design.clearance;

import java.util.ArrayList;
import java.util.DoubleSummaryStatistics;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.analysis.state.AttachmentLimit;
import org.lifeline.base.Interval;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.base.Point;
import org.lifeline.design.envelope.Envelope;
import org.lifeline.design.envelope.FailedCase;
import org.lifeline.design.envelope.FallCase;
import org.lifeline.design.envelope.LoadCombination;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.design.envelope.SwingFall;
import org.lifeline.internal.numeric.OrderedWork;
import org.lifeline.model.Fall;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Obstruction;
import org.lifeline.model.Place;

/** All falls in one stretch of a line, by energy balance. Not thread-safe. */
final class StretchFalls {
    private final LifelineDesign design;
    private final SideObstructions side;

    /** Where the first and the last of the places are, along the line [m]: falls are computed at a few, and may be at any between. */
    private double first;

    private double last;
    private double lowest = Double.POSITIVE_INFINITY;
    private double belowWalkingLevel = Double.NEGATIVE_INFINITY;
    private @Nullable FallCase governing;
    private double obstruction = Double.NEGATIVE_INFINITY;
    private double displacement;
    private double amplitude;
    private double angle;
    private double drop;
    private final Set<String> reasons = new LinkedHashSet<>();

    StretchFalls(LifelineDesign design) {
        this.design = design;
        this.side = new SideObstructions(design.clearance());
    }

    /** Runs every fall in every combination at three places, and at the supports that the stretch touches. */
    void run(Envelope envelope, List<Place> places, List<Place> supports) {
        DoubleSummaryStatistics along = Stream.concat(places.stream(), supports.stream())
                .mapToDouble(design.line()::along)
                .summaryStatistics();
        first = along.getMin();
        last = along.getMax();
        List<LoadCombination> combinations = envelope.combinations(design);
        for (Fall fall : Envelope.movingFalls(design)) {
            for (LoadCombination each : combinations) {
                along(fall, each, places);
                supports.forEach(p -> solve(fall, each, p));
                // A fall that is stated at a support, where nothing runs, runs at these places.
                if (fall.at(places.get(0)).canRun()) {
                    along(fall, each.held(), places);
                }
            }
        }
    }

    private void along(Fall fall, LoadCombination combination, List<Place> places) {
        List<Double> required = new ArrayList<>();
        for (Place each : places) {
            solve(fall, combination, each)
                    .ifPresent(r -> required.add(Quantity.REQUIRED_ELEVATION.value(r, design.modelFactors())));
        }
        if (required.size() == 3) {
            lowest = Math.min(lowest, vertex(required.get(0), required.get(1), required.get(2)));
        }
    }

    /** Lowest point of the parabola through three evenly spaced values. */
    static double vertex(double first, double middle, double last) {
        double least = Math.min(first, Math.min(middle, last));
        double curve = first - 2 * middle + last;
        double slope = last - first;
        if (curve <= 0 || Math.abs(slope) >= 2 * curve) {
            return least;
        }
        return Math.min(least, middle - slope * slope / (8 * curve));
    }

    private Optional<ArrestResult> solve(Fall fall, LoadCombination combination, Place place) {
        OrderedWork.stopIfInterrupted();
        FallCase fallCase = combination.of(fall.at(place));
        try {
            ArrestResult r = EnergyBalance.withDefaults()
                    .withTemperature(combination.temperature())
                    .withSide(combination.side())
                    .withClearance(design.clearance())
                    .withAttachmentLimit(fallCase.attachmentLimit().orElse(AttachmentLimit.RUNNING))
                    .solve(combination.line(), fallCase.fall());
            add(fallCase, r);
            return Optional.of(r);
        } catch (InvalidInputException | NoEquilibriumException e) {
            reasons.add("not computed: " + FailedCase.words(e));
            return Optional.empty();
        }
    }

    private void add(FallCase fallCase, ArrestResult r) {
        double required = Quantity.REQUIRED_ELEVATION.value(r, design.modelFactors());
        if (required < lowest) {
            lowest = required;
            governing = fallCase;
        }
        belowWalkingLevel =
                Math.max(belowWalkingLevel, Quantity.REQUIRED_BELOW_WALKING_LEVEL.value(r, design.modelFactors()));
        SwingFall swing = SwingFall.of(r);
        displacement = Math.max(displacement, swing.displacement());
        amplitude = Math.max(amplitude, swing.amplitude());
        angle = Math.max(angle, swing.angle());
        drop = Math.max(drop, swing.drop());
        double here = r.line().along(r.fall().place());
        Point start = r.line().supports().get(r.span() - 1).position();
        double there = here - r.line().stationOf(r.fall().place()) + start.horizontalDistance(r.attachmentAtPeak());
        double from = Math.min(here, there);
        double to = Math.max(here, there);
        if (!r.fall().place().isAtSupport()) {
            // What stands between two of the places is passed by a fall between them.
            from = Math.min(from, first);
            to = Math.max(to, last);
        }
        for (Obstruction o : design.clearance().obstructions()) {
            if (o.standsBetween(from, to) && o.isUnder(r.fall().largestOffset())) {
                obstruction = Math.max(obstruction, o.elevation());
            }
        }
        for (int number : side.struck(r, from, to)) {
            reasons.add("a swing strikes obstruction " + number + " beside the line");
        }
    }

    /** What the stretch needs when arrests in time need some more [m]. */
    ClearanceStretch stretch(ClearanceStretch.Extent extent, Interval line, double addition) {
        boolean any = Double.isFinite(lowest);
        double required = any ? lowest - addition : line.low();
        OptionalDouble below = Double.isFinite(obstruction) ? OptionalDouble.of(obstruction) : OptionalDouble.empty();
        if (below.isPresent() && required < below.getAsDouble()) {
            reasons.add("the clearance is not enough");
        }
        return new ClearanceStretch(
                extent,
                new ClearanceStretch.Needs(
                        line, required, any ? belowWalkingLevel + addition : 0, Optional.ofNullable(governing)),
                below,
                new ClearanceStretch.Swing(displacement, amplitude, angle, drop),
                List.copyOf(reasons));
    }
}
