package org.lifeline.design.criteria;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.lifeline.base.Interval;
import org.lifeline.design.envelope.Envelope;
import org.lifeline.design.envelope.Extreme;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.design.envelope.Tolerances;
import org.lifeline.model.Fall;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Worker;

/**
 * The falls of a design with twice the mass of those who fall, moved along the whole line by energy balance, over the ranges that its
 * envelope went over; of a range of masses, the largest. Those who hang already keep their mass.
 *
 * <p>Where the free fall is longer than 6 ft somewhere, a second envelope has a free fall of 6 ft everywhere. No fall of the rule is worse than in either, so
 * that the smaller load of the two is on the safe side.
 */
final class TwiceTheEnergy {
    private static final String TWICE = "twice the mass of ";

    private final List<Extremes> bounds;

    private TwiceTheEnergy(List<Extremes> bounds) {
        this.bounds = List.copyOf(bounds);
    }

    /**
     * Computes the falls.
     *
     * @param extremes the worst values with the masses of the design
     * @param ranges the ranges that they are over
     */
    static TwiceTheEnergy of(Extremes extremes, Tolerances ranges) {
        LifelineDesign design = extremes.design();
        Tolerances others = Tolerances.none();
        if (ranges.pretension().isPresent()) {
            others = others.withPretension(ranges.pretension().get());
        }
        if (ranges.friction().isPresent()) {
            others = others.withFriction(ranges.friction().get());
        }
        Envelope envelope = Envelope.withDefaults().withTolerances(others);
        Optional<Double> mass = ranges.mass().map(Interval::high);
        List<Extremes> bounds = new ArrayList<>();
        Extremes asPermitted = envelope.extremes(twice(design, mass, false));
        bounds.add(known(asPermitted, extremes));
        boolean longer = asPermitted
                .of(Quantity.FREE_FALL)
                .filter(e -> e.computed() > ImpactStrength.LONGEST_FREE_FALL)
                .isPresent();
        if (longer) {
            bounds.add(known(envelope.extremes(twice(design, mass, true)), extremes));
        }
        return new TwiceTheEnergy(bounds);
    }

    /** Lacks what the worst values with one mass lack, and the cases that could not be computed. */
    private static Extremes known(Extremes doubled, Extremes extremes) {
        Extremes e = extremes.lacking().isEmpty() ? doubled : doubled.lacking(extremes.lacking());
        return e.failures().isEmpty()
                ? e
                : e.lacking(e.failures().size() + " arrests of twice the energy could not be computed");
    }

    /** The design with falls of twice the mass, whose workers have names of their own: those who hang are those of the design. */
    private static LifelineDesign twice(LifelineDesign design, Optional<Double> mass, boolean cut) {
        LifelineDesign.Builder b = LifelineDesign.builder(design.title())
                .line(design.line())
                .modelFactors(design.modelFactors())
                .clearance(design.clearance().withObstructions(List.of()));
        design.temperatures().forEach(b::temperature);
        Map<String, Worker> all = new LinkedHashMap<>();
        design.workers().forEach(w -> all.put(w.id(), w.withMass(mass.orElse(w.mass()))));
        for (Fall fall : Envelope.movingFalls(design)) {
            Fall.Builder f = Fall.builder(fall.id()).at(fall.place());
            for (Worker each : fall.fallers()) {
                Worker twice = each.toBuilder(TWICE + each.id())
                        .mass(2 * mass.orElse(each.mass()))
                        .build();
                all.put(twice.id(), twice);
                f.faller(twice);
            }
            for (Fall.Hanging each : fall.hanging()) {
                f.hanging(each.worker().withMass(mass.orElse(each.worker().mass())), each.place());
            }
            OptionalDouble stated = fall.freeFall();
            if (cut) {
                f.freeFall(Math.min(stated.orElse(ImpactStrength.LONGEST_FREE_FALL), ImpactStrength.LONGEST_FREE_FALL));
            } else {
                stated.ifPresent(f::freeFall);
            }
            b.fall(f.build());
        }
        all.values().forEach(b::worker);
        return b.build();
    }

    /** The load on a part; empty where it was not computed. */
    Optional<Extreme> load(Function<Extremes, Optional<Extreme>> part) {
        return bounds.stream().flatMap(e -> part.apply(e).stream()).min(Comparator.comparingDouble(Extreme::value));
    }
}
