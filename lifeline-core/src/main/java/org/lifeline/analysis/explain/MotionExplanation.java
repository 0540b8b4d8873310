package org.lifeline.analysis.explain;

import static org.lifeline.analysis.explain.Expression.minus;
import static org.lifeline.analysis.explain.Expression.sum;

import java.util.ArrayList;
import java.util.List;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.state.EnergyAccount;
import org.lifeline.analysis.state.InlineAbsorberState;
import org.lifeline.analysis.state.SupportReaction;
import org.lifeline.base.unit.Dimension;

/**
 * Writes down what a motion in time came to: numbers that no formula of a few terms gives, each with the moment it belongs
 * to, and the energy account that ties them together.
 */
final class MotionExplanation {
    private static final String PEAK = "integration in time: peak of the first catch";
    private static final String LOWEST = "integration in time: at the lowest point";

    private final CalculationSheet sheet;
    private final ArrestResult arrest;

    MotionExplanation(CalculationSheet sheet, ArrestResult arrest) {
        this.sheet = sheet;
        this.arrest = arrest;
    }

    /** Descent and extension at the lowest point, for what follows. */
    record Figures(Figure descent, Figure deployment) {}

    Figures write() {
        sheet.section("Motion of line and workers");
        sheet.given("x", "largest extension of the connecting subsystem", arrest.deployment(), Dimension.LENGTH, PEAK);
        sheet.given("F_a", "arrest force on one worker", arrest.arrestForce(), Dimension.FORCE, PEAK);
        sheet.given("P", "force of all who fall on the line", arrest.lineLoad(), Dimension.FORCE, PEAK);
        sheet.given("T_m", "largest tension in the cable", arrest.maximumTension(), Dimension.FORCE, PEAK);
        int number = 0;
        for (SupportReaction each : arrest.supports()) {
            sheet.given("R_" + number, "force of the line on " + each.id(), each.force(), Dimension.FORCE, PEAK);
            number++;
        }
        for (InlineAbsorberState each : arrest.inlineAbsorbers()) {
            sheet.given(
                    "e_" + each.supportId(),
                    "extension of the in-line absorber at " + each.supportId(),
                    each.extension(),
                    Dimension.LENGTH,
                    PEAK);
        }
        Figure descent = sheet.given(
                "δ", "descent of the attachment since before the fall", arrest.lineDescent(), Dimension.LENGTH, LOWEST);
        sheet.given("f", "sag at the load, below the chord", arrest.sag(), Dimension.LENGTH, LOWEST);
        Figure extension = sheet.given(
                "x_l",
                "extension of the connecting subsystem, as far as it reaches down",
                arrest.reach(),
                Dimension.LENGTH,
                LOWEST);
        double spread = arrest.convergence().residual();
        if (Double.isFinite(spread)) {
            sheet.given("ρ", "bound of what finer meshes change in the peaks", spread, Dimension.RATIO, "refinement");
        }
        writeEnergies();
        return new Figures(descent, extension);
    }

    private void writeEnergies() {
        sheet.section("Energy account at the lowest point");
        EnergyAccount e = arrest.energy();
        Figure fall = sheet.given("W", "set free by those who fall", e.fall(), Dimension.ENERGY, LOWEST);
        List<Figure> parts = new ArrayList<>();
        parts.add(energy("U_c", "cable: strain, weight, motion, damping", e.cable()));
        parts.add(energy("U_h", "lifted hanging workers, motion of workers", e.hanging()));
        parts.add(energy("U_x", "taken by the connecting subsystems", e.connection()));
        parts.add(energy("Q", "heat of friction at the anchors", e.friction()));
        parts.add(energy("U_i", "taken by in-line absorbers", e.inlineAbsorbers()));
        parts.add(energy("U_a", "elastic anchors", e.anchors()));
        Figure taken = sheet.row("U", "taken in all", sum(parts), Dimension.ENERGY, "sum");
        sheet.row("ΔW", "what does not add up", minus(fall, taken), Dimension.ENERGY, "difference");
    }

    private Figure energy(String symbol, String what, double value) {
        return sheet.given(symbol, what, value, Dimension.ENERGY, LOWEST);
    }
}
