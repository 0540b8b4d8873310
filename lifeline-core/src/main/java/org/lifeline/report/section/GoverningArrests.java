package org.lifeline.report.section;

import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.Method;
import org.lifeline.base.InertText;
import org.lifeline.design.envelope.Extreme;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.design.envelope.FallCase;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.ModelFactors;
import org.lifeline.model.Support;
import org.lifeline.report.document.CaseNames;
import org.lifeline.report.document.Quantities;
import org.lifeline.report.document.ReportDetail;

/**
 * Which arrest governs which quantity, model factors applied: the number that a report gives to the arrest that {@link
 * Extremes} finds, with its rule for a tie.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class GoverningArrests {
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
    private final Extremes extremes;
    private final List<Integer> numbers;
    private final List<Integer> calculated;

    /**
     * Finds what governs.
     *
     * @param design the design
     * @param arrests its arrests
     */
    public GoverningArrests(LifelineDesign design, List<ArrestResult> arrests) {
        this.design = design;
        this.arrests = arrests;
        this.extremes = Extremes.of(design, arrests);
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

    /**
     * Numbers of the arrests that govern.
     *
     * @return numbers from 1, rising; unmodifiable
     */
    public List<Integer> numbers() {
        return numbers;
    }

    /**
     * Numbers of the arrests that govern the end anchor load and the clearance: those shown in full.
     *
     * @return numbers from 1, rising; unmodifiable
     */
    public List<Integer> calculated() {
        return calculated;
    }

    /**
     * Numbers of the arrests that are shown in full, with pictures and accounts.
     *
     * @param detail how much the report shows
     * @return numbers from 1, rising; unmodifiable
     */
    public List<Integer> shown(ReportDetail detail) {
        return switch (detail) {
            case SHORT -> List.of();
            case GOVERNING -> calculated;
            case FULL -> IntStream.rangeClosed(1, arrests.size()).boxed().toList();
        };
    }

    /**
     * Numbers of the arrests that are calculated line by line.
     *
     * @param detail how much the report shows
     * @return numbers from 1, rising; unmodifiable
     */
    public List<Integer> lineByLine(ReportDetail detail) {
        return switch (detail) {
            case SHORT -> List.of();
            case GOVERNING ->
                worst(Quantity.END_ANCHOR_LOAD).map(w -> List.of(w.number())).orElse(List.of());
            case FULL -> shown(detail);
        };
    }

    boolean isScaled() {
        return !design.modelFactors().equals(ModelFactors.none());
    }

    Optional<Worst> worst(Quantity quantity) {
        return extremes.of(quantity).map(this::numbered);
    }

    Optional<Worst> onSupport(int support) {
        return extremes.onSupport(design.line().supports().get(support).id()).map(this::numbered);
    }

    /** An extreme with the number of its arrest. */
    private Worst numbered(Extreme worst) {
        int at = 0;
        while (arrests.get(at) != worst.arrest()) {
            at++;
        }
        return new Worst(at + 1, worst.computed(), worst.value());
    }

    /** Names of the supports, inert. */
    List<String> supports() {
        return design.line().supports().stream()
                .map(Support::id)
                .map(InertText::name)
                .toList();
    }

    /** A worst value's case as one of the arrests where it is one, else in words; said where its value is one in time. */
    String name(Extreme e, Quantities q) {
        String name = name(e.fallCase(), e.arrest().method(), q);
        return e.arrest().method() == Method.ENERGY_BALANCE
                ? name
                : name + ", " + CaseNames.method(e.arrest().method());
    }

    private String name(FallCase c, Method method, Quantities q) {
        boolean asDesigned = c.pretensionFactor().isEmpty()
                && c.friction().isEmpty()
                && c.mass().isEmpty()
                && c.later().isEmpty();
        for (int i = 0; i < arrests.size() && asDesigned; i++) {
            ArrestResult r = arrests.get(i);
            if (r.method() == method
                    && r.fall().id().equals(c.fall().id())
                    && r.fall().place().equals(c.fall().place())
                    && r.temperature() == c.temperature()
                    && r.side() == c.side()
                    && r.attachmentLimit().equals(c.attachmentLimit())) {
                return "arrest " + (i + 1);
            }
        }
        return CaseNames.name(c, q);
    }
}
