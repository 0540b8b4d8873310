package org.lifeline.design.criteria;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.analysis.state.AttachmentLimit;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.base.Units;
import org.lifeline.design.envelope.Extreme;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Support;
import org.lifeline.model.absorber.DeploymentForce;

/**
 * Strength of cable and anchors over their load when twice the potential impact energy is arrested (29 CFR
 * 1926.502(d)(16)(v)): that of a free fall of 6 ft, or of the free fall that the system permits, whichever is less.
 *
 * <p>Falls are computed by energy balance with twice the mass of those who fall, on both sides of the force range, since an absorber
 * that is used up turns the sides round. Twice the mass doubles the energy of the free fall exactly; what the body loses in height
 * while it is arrested is doubled as well, which errs on the safe side. Where the worst values are those of the whole line, falls of
 * twice the mass are moved along the whole line as well ({@link TwiceTheEnergy}): absorbers are used up elsewhere than where one mass governs. Of
 * given cases, those that govern the tension of the cable and the load on each anchor are computed again. The largest load of a part counts.
 */
final class ImpactStrength {
    /** Longest free fall that the rule asks for [m], 1926.502(d)(16)(v). */
    static final double LONGEST_FREE_FALL = Units.feet(6);

    private final CheckedDesign design;
    private final List<ArrestResult> doubled = new ArrayList<>();
    private @Nullable TwiceTheEnergy wholeLine;

    private ImpactStrength(CheckedDesign design) {
        this.design = design;
    }

    static List<CheckedValue> values(CheckedDesign design) {
        Lifeline line = design.line();
        ImpactStrength s = new ImpactStrength(design);
        String failed = s.compute();
        List<CheckedValue> list = new ArrayList<>();
        OptionalDouble strength = Strengths.strengthOf(line.cable());
        list.add(
                strength.isEmpty()
                        ? CheckedValue.missing("cable", Strengths.NO_BREAKING_STRENGTH)
                        : s.of("cable", strength.getAsDouble(), e -> e.of(Quantity.MAXIMUM_TENSION), failed));
        for (Support each : line.supports()) {
            list.add(
                    each.capacity().isEmpty()
                            ? CheckedValue.missing(each.id(), Strengths.NO_CAPACITY)
                            : s.of(each.id(), each.capacity().getAsDouble(), e -> e.onSupport(each.id()), failed));
        }
        return list;
    }

    /** Computes the arrests; why one of them could not be, or nothing. */
    private String compute() {
        Set<ArrestResult> governing = new LinkedHashSet<>();
        Extremes extremes = design.extremes();
        extremes.of(Quantity.MAXIMUM_TENSION).ifPresent(e -> governing.add(e.arrest()));
        for (Support each : design.line().supports()) {
            extremes.onSupport(each.id()).ifPresent(e -> governing.add(e.arrest()));
        }
        try {
            for (ArrestResult each : governing) {
                for (DeploymentForce side : DeploymentForce.values()) {
                    doubled.add(withTwiceTheEnergy(each, side));
                }
            }
            if (!governing.isEmpty() && extremes.wholeLine().isPresent()) {
                wholeLine = TwiceTheEnergy.of(extremes, extremes.wholeLine().get());
            }
            return "";
        } catch (InvalidInputException | NoEquilibriumException e) {
            return "the arrest of twice the energy could not be computed: " + e.getMessage();
        }
    }

    private CheckedValue of(String label, double strength, Function<Extremes, Optional<Extreme>> part, String failed) {
        Optional<Extreme> governing = part.apply(design.extremes());
        if (governing.isEmpty() || !failed.isEmpty()) {
            return CheckedValue.missing(label, governing.isEmpty() ? design.noCase() : failed);
        }
        Extreme extreme = governing.get();
        double force = doubled.stream()
                .mapToDouble(r -> extreme.support().map(r::anchorLoad).orElseGet(r::maximumTension))
                .max()
                .orElseThrow();
        double load = design.design().modelFactors().force() * force;
        Optional<Extreme> worse = Optional.ofNullable(wholeLine)
                .flatMap(w -> w.load(part))
                .filter(e -> e.value() > load || !e.lacking().isEmpty());
        return worse.isPresent()
                ? CheckedValue.strength(
                        label,
                        strength,
                        worse.get(),
                        new CheckedValue.Load(Math.max(load, worse.get().value())))
                : CheckedValue.strength(label, strength, extreme, new CheckedValue.Load(load));
    }

    private ArrestResult withTwiceTheEnergy(ArrestResult arrest, DeploymentForce side) {
        Fall fall = arrest.fall();
        Fall.Builder b = Fall.builder(fall.id()).at(fall.place());
        fall.fallers().forEach(w -> b.faller(w.withMass(2 * w.mass())));
        fall.hanging().forEach(h -> b.hanging(h.worker(), h.place()));
        if (fall.freeFall().isPresent() || arrest.freeFall() > LONGEST_FREE_FALL) {
            b.freeFall(Math.min(arrest.freeFall(), LONGEST_FREE_FALL));
        }
        return EnergyBalance.withDefaults()
                .withTemperature(arrest.temperature())
                .withSide(side)
                .withClearance(design.design().clearance())
                .withAttachmentLimit(arrest.attachmentLimit().orElse(AttachmentLimit.RUNNING))
                .solve(arrest.line(), b.build());
    }
}
