package org.lifeline.design.criteria;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
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
 * <p>The cases that govern the tension of the cable and the load on each anchor are computed again by energy balance with
 * twice the mass of those who fall, on both sides of the force range, since an absorber that is used up turns the sides round;
 * the largest load of a part over all of them counts. Twice the mass doubles the energy of the free fall exactly; what the body
 * loses in height while it is arrested is doubled as well, which errs on the safe side.
 */
final class ImpactStrength {
    private static final double LONGEST_FREE_FALL = Units.feet(6); // m, 1926.502(d)(16)(v)

    private final CheckedDesign design;
    private final List<ArrestResult> doubled = new ArrayList<>();

    private ImpactStrength(CheckedDesign design) {
        this.design = design;
    }

    static List<CheckedValue> values(CheckedDesign design) {
        Lifeline line = design.line();
        Extremes extremes = design.extremes();
        ImpactStrength s = new ImpactStrength(design);
        String failed = s.compute();
        List<CheckedValue> list = new ArrayList<>();
        Optional<Extreme> tension = extremes.of(Quantity.MAXIMUM_TENSION);
        OptionalDouble strength = Strengths.strengthOf(line.cable());
        list.add(
                strength.isEmpty()
                        ? CheckedValue.missing("cable", Strengths.NO_BREAKING_STRENGTH)
                        : s.of("cable", strength.getAsDouble(), tension, failed));
        for (Support each : line.supports()) {
            Optional<Extreme> load = extremes.onSupport(each.id());
            list.add(
                    each.capacity().isEmpty()
                            ? CheckedValue.missing(each.id(), Strengths.NO_CAPACITY)
                            : s.of(each.id(), each.capacity().getAsDouble(), load, failed));
        }
        return list;
    }

    /** Computes the arrests; why one of them could not be, or nothing. */
    private String compute() {
        Set<ArrestResult> governing = new LinkedHashSet<>();
        design.extremes().of(Quantity.MAXIMUM_TENSION).ifPresent(e -> governing.add(e.arrest()));
        for (Support each : design.line().supports()) {
            design.extremes().onSupport(each.id()).ifPresent(e -> governing.add(e.arrest()));
        }
        try {
            for (ArrestResult each : governing) {
                for (DeploymentForce side : DeploymentForce.values()) {
                    doubled.add(withTwiceTheEnergy(each, side));
                }
            }
            return "";
        } catch (InvalidInputException | NoEquilibriumException e) {
            return "the arrest of twice the energy could not be computed: " + e.getMessage();
        }
    }

    private CheckedValue of(String label, double strength, Optional<Extreme> governing, String failed) {
        if (governing.isEmpty() || !failed.isEmpty()) {
            return CheckedValue.missing(label, governing.isEmpty() ? design.noCase() : failed);
        }
        Extreme extreme = governing.get();
        double force = doubled.stream()
                .mapToDouble(r -> extreme.support().map(r::anchorLoad).orElseGet(r::maximumTension))
                .max()
                .orElseThrow();
        double factor = design.design().modelFactors().force();
        return CheckedValue.strength(label, strength, extreme, new CheckedValue.Load(factor * force));
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
