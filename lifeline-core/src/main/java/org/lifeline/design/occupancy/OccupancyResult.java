package org.lifeline.design.occupancy;

import java.util.ArrayList;
import java.util.List;
import org.lifeline.model.LifelineDesign;

/**
 * How many workers may be hooked on to a line at once.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class OccupancyResult {
    private final LifelineDesign design;
    private final List<TriedNumber> inSpans;
    private final List<TriedNumber> inAll;
    private final Scope scope;

    /** What was tried: whether an assessment confirmed the number, and how many selections of the crew were left out. */
    record Scope(boolean confirmed, int selectionsLeftOut) {}

    OccupancyResult(LifelineDesign design, List<TriedNumber> inSpans, List<TriedNumber> inAll, Scope scope) {
        this.design = design;
        this.inSpans = List.copyOf(inSpans);
        this.inAll = List.copyOf(inAll);
        this.scope = scope;
    }

    /**
     * The design; its workers are the crew.
     *
     * @return the design
     */
    public LifelineDesign design() {
        return design;
    }

    /**
     * Largest number of workers in one span, nobody being in the others.
     *
     * @param span number of the span, from 1
     * @return the number; 0 if not even one meets all criteria there
     */
    public int inSpan(int span) {
        return largest(inSpans, span);
    }

    /**
     * Largest number of workers on the whole line, with no more in each span than it takes.
     *
     * @return the number; 0 if not even one meets all criteria
     */
    public int inAll() {
        return largest(inAll, 0);
    }

    /**
     * Everything that was tried, in the spans first.
     *
     * @return the numbers; unmodifiable
     */
    public List<TriedNumber> tried() {
        List<TriedNumber> list = new ArrayList<>(inSpans);
        list.addAll(inAll);
        return List.copyOf(list);
    }

    /**
     * Tells whether the number in all met the criteria in an assessment, with arrests in time, and not by energy balance alone.
     *
     * @return true if an assessment was asked for
     */
    public boolean isConfirmed() {
        return scope.confirmed;
    }

    /**
     * How many selections of the crew were not tried because there are too many.
     *
     * @return number; 0 if all were tried
     */
    public int selectionsLeftOut() {
        return scope.selectionsLeftOut;
    }

    private static int largest(List<TriedNumber> list, int span) {
        return list.stream()
                .filter(t -> t.span() == span && t.isMet())
                .mapToInt(TriedNumber::number)
                .max()
                .orElse(0);
    }
}
