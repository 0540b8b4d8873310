package org.lifeline.report.section;

import org.lifeline.base.InertText;
import org.lifeline.design.criteria.CapacityCheck;
import org.lifeline.design.envelope.Extreme;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Support;
import org.lifeline.model.cable.Cable;
import org.lifeline.report.document.CaseNames;
import org.lifeline.report.document.Quantities;
import org.lifeline.report.document.QuantityKind;

/** Says what the demand and the capacity of a comparison are made of. */
final class CriterionDerivation {
    /** Relative difference below which two numbers are one [-]: rounding of a product. */
    private static final double SAME = 1e-9;

    private final LifelineDesign design;
    private final Quantities q;

    CriterionDerivation(LifelineDesign design, Quantities q) {
        this.design = design;
        this.q = q;
    }

    private static boolean same(double a, double b) {
        return Math.abs(a - b) <= SAME * Math.max(Math.abs(a), Math.abs(b));
    }

    String demand(CapacityCheck c) {
        String value = CriteriaSection.quantity(q, c.unit(), c.demand());
        String words = c.title().isEmpty() ? CriteriaSection.words(c.quantityKey()) : InertText.plain(c.title());
        Extreme e = c.governing().orElse(null);
        if (e == null) {
            return words + ": " + value;
        }
        String extreme = CriteriaSection.quantity(q, c.unit(), e.value());
        double factor = c.demand() / e.value();
        double model = e.unit().equals("N")
                ? design.modelFactors().force()
                : design.modelFactors().distance();
        String scaled = model == 1 ? "" : ", model factor " + q.input(QuantityKind.RATIO, model) + " in it";
        if (same(factor, 1)) {
            return words + ": " + value + " (" + CaseNames.place(e.fallCase(), q) + scaled + ")";
        }
        if (same(factor, Math.rint(factor))) {
            return q.input(QuantityKind.RATIO, Math.rint(factor)) + " × " + extreme + " = " + value + " ("
                    + CaseNames.place(e.fallCase(), q) + scaled + ")";
        }
        return words + ": " + value + scaled;
    }

    String capacity(CapacityCheck c) {
        String value = CriteriaSection.quantity(q, c.unit(), c.capacity());
        Cable cable = design.line().cable();
        if (cable.breakingStrength().isPresent()) {
            double strength = cable.breakingStrength().getAsDouble();
            if (same(c.capacity(), strength * cable.terminationEfficiency())) {
                return "minimum breaking strength × termination efficiency = "
                        + q.input(QuantityKind.FORCE, strength) + " × "
                        + q.input(QuantityKind.RATIO, cable.terminationEfficiency()) + " = " + value;
            }
        }
        for (Support s : design.line().supports()) {
            if (s.id().equals(c.component())
                    && s.capacity().isPresent()
                    && same(c.capacity(), s.capacity().getAsDouble())) {
                return "stated capacity of " + InertText.name(s.id()) + ": " + value;
            }
        }
        if (c.quantityKey().equals(Quantity.CLEARANCE_MARGIN.key())) {
            return "from the line to the obstruction below the governing fall: " + value;
        }
        return "limit of the criterion: " + value;
    }
}
