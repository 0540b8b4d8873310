package org.lifeline.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.ToDoubleFunction;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.design.envelope.FallCase;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.model.DeploymentForce;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.ModelFactors;
import org.lifeline.model.Support;

/**
 * Which arrest governs which quantity, model factors applied; and how arrests are named.
 *
 * <p>Immutable and thread-safe.
 */
final class Governing {
    /** What the arrests that are shown in full are chosen by. */
    private static final List<Quantity> CHOSEN = List.of(
            Quantity.ARREST_FORCE,
            Quantity.END_ANCHOR_LOAD,
            Quantity.MAXIMUM_TENSION,
            Quantity.TOTAL_FALL_DISTANCE,
            Quantity.REQUIRED_BELOW_LINE,
            Quantity.CLEARANCE_MARGIN);

    private final LifelineDesign design;
    private final List<ArrestResult> arrests;
    private final List<Integer> numbers;
    private final List<Integer> calculated;

    Governing(LifelineDesign design, List<ArrestResult> arrests) {
        this.design = design;
        this.arrests = arrests;
        TreeSet<Integer> set = new TreeSet<>();
        for (Quantity each : CHOSEN) {
            worst(each).ifPresent(w -> set.add(w.number()));
        }
        this.numbers = List.copyOf(set);
        TreeSet<Integer> few = new TreeSet<>();
        worst(Quantity.END_ANCHOR_LOAD).ifPresent(w -> few.add(w.number()));
        worst(Quantity.CLEARANCE_MARGIN)
                .or(() -> worst(Quantity.REQUIRED_BELOW_LINE))
                .ifPresent(w -> few.add(w.number()));
        this.calculated = List.copyOf(few);
    }

    /**
     * A worst value.
     *
     * @param number number of the arrest, from 1
     * @param computed the value as computed [unit of the quantity]
     * @param factored the value with model factors [unit of the quantity]
     */
    record Worst(int number, double computed, double factored) {}

    LifelineDesign design() {
        return design;
    }

    List<ArrestResult> arrests() {
        return arrests;
    }

    /** Numbers of the arrests that govern, from 1. */
    List<Integer> numbers() {
        return numbers;
    }

    /** Numbers of the arrests that govern the end anchor load and the clearance, from 1: those calculated line by line. */
    List<Integer> calculated() {
        return calculated;
    }

    boolean isScaled() {
        return !design.modelFactors().equals(ModelFactors.none());
    }

    Optional<Worst> worst(Quantity quantity) {
        return worst(
                r -> quantity.value(r, ModelFactors.none()),
                r -> quantity.value(r, design.modelFactors()),
                quantity.largestIsWorst());
    }

    Optional<Worst> onSupport(int support) {
        double factor = design.modelFactors().force();
        ToDoubleFunction<ArrestResult> force = r -> r.supports().get(support).force();
        return worst(force, r -> factor * force.applyAsDouble(r), true);
    }

    private Optional<Worst> worst(
            ToDoubleFunction<ArrestResult> computed, ToDoubleFunction<ArrestResult> factored, boolean largest) {
        Optional<Worst> worst = Optional.empty();
        for (int i = 0; i < arrests.size(); i++) {
            double value = factored.applyAsDouble(arrests.get(i));
            boolean more = worst.isEmpty()
                    || (largest
                            ? value > worst.get().factored()
                            : value < worst.get().factored());
            if (!Double.isNaN(value) && more) {
                worst = Optional.of(new Worst(i + 1, computed.applyAsDouble(arrests.get(i)), value));
            }
        }
        return worst;
    }

    /** Names of the supports, inert. */
    List<String> supports() {
        return design.line().supports().stream()
                .map(Support::id)
                .map(InertText::name)
                .toList();
    }

    static String side(DeploymentForce side) {
        return shortSide(side) + " deployment force";
    }

    static String shortSide(DeploymentForce side) {
        return side == DeploymentForce.CLEARANCE ? "clearance" : "maximum";
    }

    static String capital(String text) {
        return Character.toUpperCase(text.charAt(0)) + text.substring(1);
    }

    static String name(ArrestResult r, Quantities q) {
        return InertText.name(r.fall().id()) + ", " + q.input(Measure.TEMPERATURE, r.temperature()) + ", "
                + side(r.side());
    }

    /** A case as one of the arrests where it is one, else in words. */
    String name(FallCase c, Quantities q) {
        boolean asDesigned = c.pretensionFactor().isEmpty()
                && c.friction().isEmpty()
                && c.mass().isEmpty();
        for (int i = 0; i < arrests.size() && asDesigned; i++) {
            ArrestResult r = arrests.get(i);
            if (r.fall().id().equals(c.fall().id())
                    && r.fall().place().equals(c.fall().place())
                    && r.temperature() == c.temperature()
                    && r.side() == c.side()) {
                return "arrest " + (i + 1);
            }
        }
        return InertText.name(c.fall().id()) + ", " + place(c, q) + ", " + q.input(Measure.TEMPERATURE, c.temperature())
                + ", " + side(c.side()) + deviations(c, q, ", ");
    }

    static String place(FallCase c, Quantities q) {
        return PlaceText.asResult(c.fall().place(), q);
    }

    /** What deviates from the design in a case, each with the separator in front. */
    static String deviations(FallCase c, Quantities q, String separator) {
        StringBuilder b = new StringBuilder();
        c.pretensionFactor()
                .ifPresent(f -> b.append(separator).append("pretension × ").append(q.input(Measure.RATIO, f)));
        c.friction().ifPresent(f -> b.append(separator).append("friction ").append(q.input(Measure.RATIO, f)));
        c.mass().ifPresent(m -> b.append(separator).append("mass ").append(q.input(Measure.MASS, m)));
        return b.toString();
    }

    /** "arrests 1, 4" */
    static String list(List<Integer> numbers) {
        List<String> words = new ArrayList<>();
        numbers.forEach(n -> words.add(Integer.toString(n)));
        return (words.size() == 1 ? "arrest " : "arrests ") + String.join(", ", words);
    }
}
