package org.lifeline.design.variable;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CancellationException;
import org.jspecify.annotations.Nullable;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.analysis.state.AttachmentLimit;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.base.Violations;
import org.lifeline.design.envelope.ComputedCase;
import org.lifeline.design.envelope.Envelope;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.design.envelope.FailedCase;
import org.lifeline.design.envelope.FallCase;
import org.lifeline.design.envelope.LoadCombination;
import org.lifeline.design.envelope.WorstCases;
import org.lifeline.internal.numeric.OrderedWork;
import org.lifeline.internal.numeric.SharedWork;
import org.lifeline.model.Fall;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Place;

/**
 * The worst values of a design over the cases that governed in the envelopes of designs like it: some tens of arrests instead
 * of some hundreds. Every case is one that can happen, so that what these cases break is broken; what they keep has to be
 * confirmed by an envelope, since another case may govern in another design.
 *
 * <p>A case is a fall of the design by its id, a place by its share of the span, and a combination of temperature, side,
 * attachment and ranges. Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class GoverningCases implements WorstCases {
    private final Envelope envelope;
    private final List<Key> keys;
    private final @Nullable SharedWork shared;

    /** One case, in whatever design. */
    private record Key(String fall, Spot spot, int combination, boolean held) {}

    /** A place: at a support, or a share of the way through a span. */
    private record Spot(String support, int span, double share) {
        Place in(LifelineDesign design) {
            return support.isEmpty() ? Place.of(span, share * design.line().run(span)) : Place.atSupport(support);
        }
    }

    /** A case of a design, with the combination that it is of. */
    private record Asked(LoadCombination combination, FallCase fallCase) {}

    private GoverningCases(Envelope envelope, List<Key> keys, @Nullable SharedWork shared) {
        this.envelope = envelope;
        this.keys = List.copyOf(keys);
        this.shared = shared;
    }

    /** The same with the cases worked out by threads that share the work; by the calling thread alone if there are none. */
    GoverningCases sharedBy(@Nullable SharedWork threads) {
        return new GoverningCases(envelope, keys, threads);
    }

    /**
     * No case yet.
     *
     * @param envelope the envelope whose cases are taken
     * @return the analysis, to be given cases by {@link #and}
     */
    public static GoverningCases of(Envelope envelope) {
        Violations.required("envelope", envelope);
        return new GoverningCases(envelope, List.of(), null);
    }

    /**
     * These cases, those that govern in another envelope, and those that failed in it.
     *
     * @param extremes the extremes of an envelope of the same kind
     * @return the analysis over both
     */
    public GoverningCases and(Extremes extremes) {
        Violations.required("extremes", extremes);
        Set<Key> all = new LinkedHashSet<>(keys);
        List<LoadCombination> combinations = combinations(extremes.design());
        LifelineDesign design = extremes.design();
        List<FallCase> worst = new ArrayList<>(
                extremes.failures().stream().map(FailedCase::fallCase).toList());
        extremes.all().forEach(e -> worst.add(e.fallCase()));
        for (int i = 0; i < design.clearance().obstructions().size(); i++) {
            extremes.overObstruction(i).ifPresent(e -> worst.add(e.fallCase()));
        }
        for (FallCase c : worst) {
            for (int i = 0; i < combinations.size(); i++) {
                if (isOf(combinations.get(i), c)) {
                    all.add(new Key(c.fall().id(), spot(c.fall().place(), design), i, isHeld(c)));
                    break;
                }
            }
        }
        return new GoverningCases(envelope, List.copyOf(all), shared);
    }

    private static Spot spot(Place place, LifelineDesign design) {
        return place.support()
                .map(id -> new Spot(id, 0, 0))
                .orElseGet(() -> new Spot(
                        "", place.span(), place.station() / design.line().run(place.span())));
    }

    private static boolean isHeld(FallCase c) {
        return c.attachmentLimit().filter(l -> l == AttachmentLimit.HELD).isPresent();
    }

    private static boolean isOf(LoadCombination combination, FallCase c) {
        FallCase other = combination.of(c.fall());
        return other.temperature() == c.temperature()
                && other.side() == c.side()
                && other.pretensionFactor().equals(c.pretensionFactor())
                && other.friction().equals(c.friction())
                && other.mass().equals(c.mass());
    }

    private List<LoadCombination> combinations(LifelineDesign design) {
        return envelope.withAllCombinations().combinations(design);
    }

    /**
     * Number of cases.
     *
     * @return the number
     */
    public int size() {
        return keys.size();
    }

    /**
     * The worst values over these cases.
     *
     * @param design a design with the falls of those whose envelopes the cases are from
     * @return the extremes, with every case that could not be computed; of the whole envelope where there is no case yet, where
     *     the design lacks a fall or a combination, or where the envelope goes over a range of masses
     */
    @Override
    public Extremes extremes(LifelineDesign design) {
        Violations.required("design", design);
        if (keys.isEmpty() || envelope.tolerances().mass().isPresent()) {
            // A range of masses is also what criteria on masses are judged on, and only the envelope knows it.
            return envelope.extremes(design);
        }
        List<Fall> falls = Envelope.movingFalls(design);
        List<LoadCombination> combinations = combinations(design);
        List<Asked> asked = new ArrayList<>();
        for (Key key : keys) {
            List<Fall> named =
                    falls.stream().filter(f -> f.id().equals(key.fall)).toList();
            if (named.size() != 1 || key.combination >= combinations.size()) {
                return envelope.extremes(design);
            }
            LoadCombination combination = combinations.get(key.combination);
            Fall fall = named.get(0).at(key.spot.in(design));
            LoadCombination held = key.held && fall.canRun() ? combination.held() : combination;
            asked.add(new Asked(held, held.of(fall)));
        }
        List<ComputedCase> cases = new ArrayList<>();
        List<FailedCase> failures = new ArrayList<>();
        long done = OrderedWork.run(asked.size(), i -> computed(asked.get((int) i), design), shared, (i, outcome) -> {
            outcome.result().ifPresent(cases::add);
            outcome.failure().ifPresent(failures::add);
            return true;
        });
        if (done < asked.size()) {
            throw new CancellationException("interrupted");
        }
        return Extremes.ofCases(design, cases, failures).ofWholeLine(envelope.tolerances());
    }

    /** What came of a case: one of the two is there. */
    private record Computed(Optional<ComputedCase> result, Optional<FailedCase> failure) {}

    private static Computed computed(Asked asked, LifelineDesign design) {
        FallCase c = asked.fallCase;
        EnergyBalance analysis = EnergyBalance.withDefaults()
                .withTemperature(c.temperature())
                .withSide(c.side())
                .withClearance(design.clearance())
                .withAttachmentLimit(c.attachmentLimit().orElse(AttachmentLimit.RUNNING));
        try {
            ComputedCase found = new ComputedCase(c, analysis.solve(asked.combination.line(), c.fall()));
            return new Computed(Optional.of(found), Optional.empty());
        } catch (InvalidInputException | NoEquilibriumException e) {
            return new Computed(Optional.empty(), Optional.of(FailedCase.of(c, e)));
        }
    }
}
