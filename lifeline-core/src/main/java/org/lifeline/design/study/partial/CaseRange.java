package org.lifeline.design.study.partial;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.Violations;

/**
 * Cases of a study that follow each other.
 *
 * <p>Immutable and thread-safe.
 *
 * @param first number of the first case, from 1
 * @param last number of the last case, which belongs to the range
 * @since 1.0.0
 */
public record CaseRange(long first, long last) {
    /**
     * Checks the numbers.
     *
     * @param first number of the first case, from 1
     * @param last number of the last case
     * @throws org.lifeline.base.InvalidInputException if there is no case in the range
     */
    public CaseRange {
        new Violations()
                .require(first >= 1, "first", GivenValue.count(first), InputRule.BELOW_LEAST, 1)
                .require(last >= first, "last", GivenValue.count(last), InputRule.LAST_BEFORE_FIRST, first)
                .throwIfAny();
    }

    /**
     * Number of cases.
     *
     * @return the number, at least 1
     */
    public long size() {
        return last - first + 1;
    }

    /**
     * Cuts the cases 1 … cases into parts of nearly equal size, for as many machines.
     *
     * @param cases number of cases, at least 1
     * @param parts number of parts, from 1 to the number of cases
     * @return the parts, in order; unmodifiable
     * @throws org.lifeline.base.InvalidInputException if a number is out of range
     */
    public static List<CaseRange> parts(long cases, int parts) {
        new Violations()
                .require(cases >= 1, "cases", GivenValue.count(cases), InputRule.BELOW_LEAST, 1)
                .require(parts >= 1 && parts <= cases, "parts", GivenValue.count(parts), InputRule.COUNT_RANGE, cases)
                .throwIfAny();
        List<CaseRange> list = new ArrayList<>();
        long each = cases / parts;
        long larger = cases % parts;
        long next = 1;
        for (int i = 0; i < parts; i++) {
            long size = each + (i < larger ? 1 : 0);
            list.add(new CaseRange(next, next + size - 1));
            next += size;
        }
        return List.copyOf(list);
    }

    /** Ranges in rising order, neighbours joined; a case that stands in two of them is a violation. */
    static List<CaseRange> joined(List<CaseRange> ranges) {
        List<CaseRange> sorted = new ArrayList<>(ranges);
        sorted.sort(Comparator.comparingLong(CaseRange::first));
        List<CaseRange> list = new ArrayList<>();
        for (CaseRange each : sorted) {
            CaseRange before = list.isEmpty() ? null : list.get(list.size() - 1);
            if (before != null && each.first <= before.last) {
                new Violations()
                        .require(false, "cases", GivenValue.text(each.toString()), InputRule.CASES_TWICE, before)
                        .throwIfAny();
            }
            if (before != null && each.first == before.last + 1) {
                list.set(list.size() - 1, new CaseRange(before.first, each.last));
            } else {
                list.add(each);
            }
        }
        return List.copyOf(list);
    }

    @Override
    public String toString() {
        return first + " … " + last;
    }
}
