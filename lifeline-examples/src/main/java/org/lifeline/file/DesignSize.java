package org.lifeline.file;

import java.util.List;
import java.util.Optional;
import org.lifeline.base.GivenValue;
import org.lifeline.base.Violation;
import org.lifeline.model.LifelineDesign;

/**
 * How much one design file may ask for. An arrest takes a few milliseconds and a time in proportion to the number of
 * supports; what is refused here would take hours, or a result file that nobody reads.
 */
final class DesignSize {
    /** Most arrests: falls, times temperatures, times two deployment forces. */
    static final long MOST_ARRESTS = 20_000;

    /** Most rows of supports in a result file: arrests times supports; 380 bytes each. */
    static final long MOST_ROWS = 200_000;

    /** Most searches for the worst place where no falls are named: spans, times workers, times temperatures. */
    static final long MOST_SEARCHES = 2_000;

    /**
     * Most of the whole line that is searched: spans, times falls that are moved, times temperatures, times spans again, since an
     * arrest costs more on a longer line. 300 spans with one fall and two temperatures take some tens of minutes.
     */
    static final long MOST_WHOLE = 200_000;

    private DesignSize() {}

    /** What is too much for falls that are moved along the whole line, if anything. */
    static Optional<Violation> exceededByWholeLine(LifelineDesign design) {
        long spans = design.line().spans();
        long moved = design.falls().isEmpty()
                ? design.workers().size()
                : design.falls().size();
        return over(
                MOST_WHOLE,
                List.of(spans, moved, Math.max(1L, design.temperatures().size()), spans),
                "%d spans, along which %d falls are moved at %d temperatures",
                "as spans × falls × temperatures × spans; report --no-envelope computes the stated falls alone");
    }

    /** What is too much of a design, if anything. */
    static Optional<Violation> exceeded(LifelineDesign design) {
        long temperatures = Math.max(1, design.temperatures().size());
        long supports = design.line().supports().size();
        if (design.falls().isEmpty()) {
            long workers = design.workers().size();
            return over(
                    MOST_SEARCHES,
                    List.of(supports - 1, workers, temperatures),
                    "%d spans, %d workers and %d temperatures to be searched",
                    "searches for the worst place; name the falls");
        }
        long falls = design.falls().size();
        return over(
                        MOST_ARRESTS,
                        List.of(2L, falls, temperatures),
                        "%2$d falls at %3$d temperatures with both forces",
                        "arrests; split the design")
                .or(() -> over(
                        MOST_ROWS,
                        List.of(2L, falls, temperatures, supports),
                        "%2$d falls at %3$d temperatures with both forces on %4$d supports",
                        "loads on supports; split the design"));
    }

    private static Optional<Violation> over(long most, List<Long> factors, String form, String what) {
        // At most four factors of at most 10 001 each: no overflow.
        long product = factors.stream().reduce(1L, (a, b) -> a * b);
        return product <= most
                ? Optional.empty()
                : Optional.of(Violation.of(
                        "falls",
                        GivenValue.text(String.format(java.util.Locale.ROOT, form, factors.toArray())),
                        FileRule.TOO_LARGE,
                        most,
                        what));
    }
}
